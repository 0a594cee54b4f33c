//! Throws of the dice from one number, so that a case is its seed.

#[derive(Clone)]
pub struct Throw(u64);

impl Throw {
    pub fn new(seed: u64) -> Throw {
        Throw(seed)
    }

    /// SplitMix64 (Steele, Lea & Flood 2014, OOPSLA; constants as printed there).
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// 0 to n - 1.
    pub fn below(&mut self, n: usize) -> usize {
        (self.next() % n as u64) as usize
    }

    /// From a to b, both counted.
    pub fn between(&mut self, a: i64, b: i64) -> i64 {
        a + (self.next() % (b - a + 1) as u64) as i64
    }

    pub fn chance(&mut self, percent: u64) -> bool {
        self.next() % 100 < percent
    }

    pub fn one<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.below(of.len())]
    }

    /// From 0 to 1.
    pub fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }
}
