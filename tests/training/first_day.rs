//! What a coach and a physiotherapist demand of the first day: what two judges would not have signed, each as a demand of a client
//! whose file says in words who it is.

use super::coach::{Case, Line};
use rungbook::curriculum::words::{Pattern, Phase};

impl Case<'_> {
    /// What holds of every client, and what is demanded of some of them.
    pub fn demands_of_today(&self) {
        let today = match self.sessions().is_empty() {
            true => return,
            false => self.first_session(),
        };
        // Nobody knows what a few reps of something plain and new leave.
        self.all(&self.lines(), "no reserve that nobody knows", &|l| {
            let m = l.movement;
            let strict = m.guarded() || m.phase() == Some(Phase::Lowering);
            !l.is_new() || strict || m.pattern() == Pattern::Exit || l.line["in_reserve"].is_null()
        });
        let warm_up = self.sessions()[0]["warm_up"].to_string();
        let of = |id: &str| {
            let line = today.iter().find(|l| l.movement.id().as_str() == id);
            line.unwrap_or_else(|| panic!("{}: {id} today", self.name))
        };
        let clause = |l: &Line<'_>| l.says("then").contains("while it is clean");
        let left = |id: &str| {
            let out = self.sessions()[0]["left_out"].as_array();
            out.is_some_and(|out| out.iter().any(|l| l["movement"] == id))
        };
        match self.name.as_str() {
            "18-sides-apart" | "27-stiff-office" => {
                self.all(&today, "one aim a line", &|l| {
                    l.says("block") != "range" || !l.says("why").contains("is asked")
                });
            }
            "44-seventy-twelve-squats" => {
                let pushes = |l: &&Line<'_>| l.pattern() == "horizontal push";
                let push = today.iter().find(pushes).expect("a push");
                assert_eq!(push.movement.id().as_str(), "push-up-kneeling-hands-raised");
            }
            "45-shoulder-five" => {
                self.all(&today, "nothing overhead", &|l| {
                    l.pattern() != "vertical pull" && l.pattern() != "vertical push"
                });
                assert!(
                    warm_up.contains("hurts more than when you began"),
                    "{warm_up}"
                );
                for said in ["door frame", "its pain reaches", "overhead", "up a wall"] {
                    assert!(!warm_up.contains(said), "{}: {warm_up}", self.name);
                }
            }
            "32-knee-four" => {
                for said in ["slow squats", "brisk walking"] {
                    assert!(!warm_up.contains(said), "{}: {warm_up}", self.name);
                }
            }
            "46-shoulder-seven" => {
                assert!(clause(of("single-leg-balance")), "{}", self.name);
                let l = of("hip-hinge");
                assert_eq!((l.number("sets"), l.number("amount")), (2.0, 3.0));
                assert!(left("side-plank"), "{}: it is named", self.name);
            }
            "47-beginner-twelve-second-hang" => {
                let l = of("push-up-kneeling-hands-raised");
                assert_eq!((l.number("sets"), l.number("amount")), (2.0, 5.0));
            }
            "48-seventy-wants-to-lift" => {
                let squats = |l: &Line<'_>| l.movement.id().as_str() == "squat";
                assert!(
                    today.iter().any(squats) || left("squat"),
                    "{}: squats",
                    self.name
                );
            }
            "52-neck-numb" => assert!(!warm_up.contains("door frame"), "{warm_up}"),
            "54-off-eighty-whole-body" => {
                let squat = of("squat");
                assert!(clause(squat) && squat.says("then").contains("8 reps at most"));
                assert!(squat.line["in_reserve"].is_null());
            }
            "55-push-failed-yesterday" => {
                let said = self.answer["conditions"].to_string();
                assert!(said.contains("rest day"), "{}: {said}", self.name);
            }
            "56-floor-side-plank" => {
                for said in ["a wall,", "up a wall", "door"] {
                    assert!(!warm_up.contains(said), "{}: {warm_up}", self.name);
                }
            }
            "09-pain-two" => assert!(warm_up.contains("reaches 3"), "{warm_up}"),
            "60-carries-first" => {
                let carry = of("suitcase-carry");
                assert_eq!(carry.number("amount"), 15.0, "{}", carry.line);
                assert!(!warm_up.contains("2 seconds"), "{warm_up}");
            }
            _ => {}
        }
    }
}
