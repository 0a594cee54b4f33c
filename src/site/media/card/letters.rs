//! Text as outlines, from a font that the program carries: the same on every machine, whatever fonts that has.

use tiny_skia::{PathBuilder, Transform};
use ttf_parser::{Face, GlyphId, OutlineBuilder};

/// The letters that a card can show: Latin, Greek and Cyrillic. A name in any other script (Hebrew, Arabic, those of Asia) is
/// left out of the drawing: this font has no outlines for it, and letters that join or run from the right need a shaper.
/// The words beside the picture (`og:title`, `og:image:alt`) say the name in every script.
pub struct Letters {
    face: Face<'static>,
}

/// How far a size may shrink before lines are cut.
const STEP: f32 = 4.0;

impl Letters {
    pub fn new() -> Option<Letters> {
        let face = Face::parse(notosans::REGULAR_TTF, 0).ok()?;
        Some(Letters { face })
    }

    /// Whether every letter has an outline, and none is a combining mark, which would stand beside its letter.
    pub fn can_write(&self, text: &str) -> bool {
        text.chars()
            .all(|c| !('\u{300}'..='\u{36f}').contains(&c) && self.face.glyph_index(c).is_some())
    }

    /// The width of a line in pixels.
    pub fn width(&self, text: &str, size: f32) -> f32 {
        let units: u32 = text.chars().map(|c| self.advance(self.glyph(c))).sum();
        units as f32 * self.scale(size)
    }

    /// The largest size at which a text stands in so many lines of a width, with its lines; at the smallest the rest is cut.
    pub fn fit(
        &self,
        text: &str,
        width: f32,
        lines: usize,
        from: f32,
        to: f32,
    ) -> (f32, Vec<String>) {
        let mut size = from;
        loop {
            let mut broken = self.broken(text, width, size);
            let fits = broken.len() <= lines && broken.iter().all(|l| self.width(l, size) <= width);
            if fits {
                return (size, broken);
            }
            if size - STEP < to {
                broken.truncate(lines);
                broken.iter_mut().for_each(|l| self.cut(l, width, size));
                return (size, broken);
            }
            size -= STEP;
        }
    }

    /// Lines broken at spaces.
    fn broken(&self, text: &str, width: f32, size: f32) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        for word in text.split_whitespace() {
            match lines.last_mut() {
                Some(line) if self.width(&format!("{line} {word}"), size) <= width => {
                    line.push(' ');
                    line.push_str(word);
                }
                _ => lines.push(word.to_string()),
            }
        }
        lines
    }

    /// A line too long for its width, with an ellipsis for what is gone.
    fn cut(&self, line: &mut String, width: f32, size: f32) {
        if self.width(line, size) <= width {
            return;
        }
        while line.pop().is_some() {
            if self.width(&format!("{line}…"), size) <= width {
                break;
            }
        }
        line.push('…');
    }

    /// Adds a line's outlines with its foot at a place.
    pub fn write(&self, path: &mut PathBuilder, text: &str, size: f32, at: (f32, f32)) {
        let scale = self.scale(size);
        let mut left = at.0;
        for c in text.chars() {
            let glyph = self.glyph(c);
            let mut outline = Outline(PathBuilder::new());
            self.face.outline_glyph(glyph, &mut outline);
            let place = Transform::from_row(scale, 0.0, 0.0, -scale, left, at.1);
            if let Some(letter) = outline.0.finish().and_then(|p| p.transform(place)) {
                path.push_path(&letter);
            }
            left += self.advance(glyph) as f32 * scale;
        }
    }

    fn glyph(&self, c: char) -> GlyphId {
        self.face.glyph_index(c).unwrap_or(GlyphId(0))
    }

    fn advance(&self, glyph: GlyphId) -> u32 {
        u32::from(self.face.glyph_hor_advance(glyph).unwrap_or(0))
    }

    fn scale(&self, size: f32) -> f32 {
        size / f32::from(self.face.units_per_em())
    }
}

struct Outline(PathBuilder);

impl OutlineBuilder for Outline {
    fn move_to(&mut self, x: f32, y: f32) {
        self.0.move_to(x, y);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.0.line_to(x, y);
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        self.0.quad_to(x1, y1, x, y);
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.0.cubic_to(x1, y1, x2, y2, x, y);
    }

    fn close(&mut self) {
        self.0.close();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_written_only_where_every_letter_is_there() {
        let letters = Letters::new().expect("the font can be read");
        for name in [
            "Strict ring muscle-up",
            "Élévation à l’équerre",
            "Łączenie",
            "Стойка",
            "Ισορροπία",
        ] {
            assert!(letters.can_write(name), "{name}");
        }
        for name in ["עמידת ידיים", "وقوف", "倒立", "e\u{301}", "🤸"] {
            assert!(!letters.can_write(name), "{name}");
        }
    }

    #[test]
    fn long_names_shrink_then_wrap_then_are_cut() {
        let letters = Letters::new().expect("the font can be read");
        let fit = |text: &str| letters.fit(text, 600.0, 3, 84.0, 48.0);
        assert_eq!(fit("Plank").0, 84.0);
        let (size, lines) = fit("A rather long name of a movement that needs several lines");
        assert!(size < 84.0 && lines.len() == 3, "{size} {lines:?}");
        let (size, lines) = fit(&"Unbreakable".repeat(12));
        assert!((48.0..52.0).contains(&size) && lines.len() == 1);
        assert!(lines[0].ends_with('…') && letters.width(&lines[0], size) <= 600.0);
    }
}
