//! Random cases that fall the same way in every run. `RUNGBOOK_SEED=7` throws other dice; `RUNGBOOK_CASES=100000` makes a long
//! run, each property as many cases as that.

use proptest::test_runner::{Config, RngSeed};

const SEED: u64 = 20_260_101;

/// The number in an environment variable.
fn number(name: &str) -> Option<u64> {
    let text = std::env::var(name).ok()?;
    Some(
        text.parse()
            .unwrap_or_else(|_| panic!("{name} is `{text}`, not a whole number")),
    )
}

/// How many cases a property takes, of which the usual run takes `usual`, and with which seed.
pub fn config(usual: u32) -> Config {
    let cases = number("RUNGBOOK_CASES").map(|n| u32::try_from(n).unwrap_or(u32::MAX));
    Config {
        cases: cases.unwrap_or(usual),
        rng_seed: RngSeed::Fixed(number("RUNGBOOK_SEED").unwrap_or(SEED)),
        failure_persistence: None,
        max_shrink_iters: 400,
        ..Config::default()
    }
}
