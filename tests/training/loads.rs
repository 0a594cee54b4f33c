//! Clients whose records say how much: what was lifted, and what is far too easy. Each file says in words who it is and what is
//! demanded; here the demands are checked.

use super::coach::{Case, Line};

impl Case<'_> {
    /// What each client's comment demands.
    pub fn demands_of_load(&self) {
        let all = self.lines();
        let is = |l: &Line<'_>, id: &str| l.movement.id().as_str() == id;
        match self.name.as_str() {
            "load-five-days-ago" => {
                let first = all.iter().find(|l| is(l, "weighted-dip"));
                let first = first.unwrap_or_else(|| panic!("{}: weighted dips", self.name));
                assert!(
                    first.number("with_kg") >= 18.75
                        && first.number("amount") >= 5.0
                        && first.number("in_reserve") == 2.0,
                    "{}: {}",
                    self.name,
                    first.line
                );
            }
            "load-by-a-single" => {
                let first = |l: &&Line<'_>| {
                    is(l, "weighted-pull-up-light")
                        && l.says("block") == "strength"
                        && l.line["toward"]["movement"] == "weighted-pull-up"
                        && (3.0..=4.0).contains(&l.number("amount"))
                        && l.number("sets") >= 4.0
                        && (12.5..=15.0).contains(&l.number("with_kg"))
                        && l.number("in_reserve") >= 2.0
                };
                let today = self.first_session();
                assert!(today.iter().any(|l| first(&l)), "{}: heavy work", self.name);
                self.all(&all, "never near the single", &|l| {
                    l.number("with_kg") <= 15.0
                });
                assert_eq!(self.limiter(), "weighted-pull-up", "{}", self.name);
            }
            "load-six-with-ten" => {
                self.some(&all, "six with ten leave three of three", &|l| {
                    is(l, "weighted-pull-up-light")
                        && (l.number("with_kg"), l.number("amount")) == (10.0, 3.0)
                        && l.number("in_reserve") == 3.0
                });
                self.all(&all, "a first lowering with most of it", &|l| {
                    !is(l, "weighted-pull-up-lowering")
                        || l.number("with_kg") >= 7.5 && l.number("with_kg") <= 8.0
                });
            }
            "load-of-a-hinge" => {
                self.some(&all, "six of the ten with 16 kg", &|l| {
                    is(l, "weighted-hinge")
                        && (l.number("with_kg"), l.number("amount")) == (16.0, 6.0)
                        && l.number("in_reserve") == 4.0
                });
                // A tenth of 63 kg, in whole plates of 1.25 kg, as its page says.
                let carries = |l: &Line<'_>| is(l, "suitcase-carry");
                self.some(&all, "a carry", &carries);
                self.all(&all, "a tenth of body weight in one hand", &|l| {
                    !carries(l) || l.number("with_kg") == 6.25
                });
            }
            "load-far-too-easy" => {
                let easy = |l: &Line<'_>| {
                    ["3 s down", "one easy set"]
                        .iter()
                        .any(|says| l.says("why").contains(says))
                };
                let far = |l: &Line<'_>| {
                    is(l, "push-up-kneeling-hands-raised") || l.says("rule") == "show it"
                };
                self.some(&all, "far too easy", &far);
                self.all(&all, "says that it is easy", &|l| !far(l) || easy(l));
                let later = |l: &Line<'_>| l.day() > all[0].day();
                self.all(&all, "what was shown is over", &|l| {
                    !later(l) || !is(l, "row-upright")
                });
                self.some(&all, "the harder row goes on", &|l| {
                    later(l) && is(l, "row-hip-high")
                });
            }
            other => panic!("{other}: nobody says what is demanded"),
        }
    }
}
