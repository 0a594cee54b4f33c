//! Pictures: the coach's own, taken over and made smaller, and the cards and icons that the program draws.

pub mod card;
pub mod picture;
