//! Training: what stands between a person and the goal, which of it can be worked on today, how much, and what has to be
//! left alone.
//!
//! Pure: the day is an input. The page's own script gives the same answers from the published tables. Estimates, and said so
//! wherever they are shown.

mod absent;
mod aim;
mod amounts;
mod back;
mod barred;
mod before;
pub mod calendar;
mod candidates;
mod care;
mod closed;
pub mod constants;
mod diary;
mod ease;
mod ended;
mod facts;
mod follows;
mod goal;
mod lately;
mod lighter;
mod line;
mod load;
mod now;
mod plan;
mod presumed;
mod reason;
mod refusal;
mod retest;
mod say;
mod say_warm;
mod say_way;
mod session;
mod trainee;
mod turns;
mod unhurt;
mod variation;

pub use aim::{Aim, aim};
pub use care::Care;
pub use closed::{Closed, OneLeg, Stop};
pub use constants::{Constants, K};
pub use ended::{holds, takes_back};
pub use facts::{Facts, Group, Kind, ORDER, Roster};
pub use goal::{Gap, Goal};
pub use line::{Line, Side, Sides, Unit};
pub use now::Now;
pub use plan::{Condition, Retest, Sore, Training, train};
pub use reason::{Block, Left, Reason, Rule, Then};
pub use refusal::Refusal;
pub use say::{Say, TOKEN, paced};
pub use session::{Session, warm_up_minutes};
pub use trainee::{Logged, Trainee, in_mass};

#[cfg(test)]
mod tests;
