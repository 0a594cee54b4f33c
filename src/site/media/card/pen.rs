//! Few inks on one ground, as a small PNG: coverage is drawn for each ink, then both become one palette of sixteen colours.

use tiny_skia::{FillRule, Mask, Path, Transform};

pub type Colour = [u8; 3];

/// Shades of each ink, the ground not counted: together with it sixteen.
const SHADES: [u8; 3] = [7, 4, 4];

/// Pairs of pixels that are looked at together.
const STRETCH: usize = 32;

/// A drawing in three inks.
pub struct Pen {
    width: u32,
    height: u32,
    inks: [Mask; 3],
}

impl Pen {
    pub fn new(width: u32, height: u32) -> Option<Pen> {
        let mask = || Mask::new(width, height);
        Some(Pen {
            width,
            height,
            inks: [mask()?, mask()?, mask()?],
        })
    }

    pub fn fill(&mut self, ink: usize, path: &Path) {
        self.inks[ink].fill_path(path, FillRule::Winding, true, Transform::identity());
    }

    /// The drawing as a PNG of four bits a pixel.
    pub fn png(&self, ground: Colour, colours: [Colour; 3]) -> Option<Vec<u8>> {
        let mut palette: Vec<u8> = ground.to_vec();
        // For each ink the palette's index by coverage.
        let mut index = [[0u8; 256]; 3];
        for (ink, shades) in SHADES.into_iter().enumerate() {
            let first = (palette.len() / 3) as u8;
            for shade in 1..=shades {
                for (under, over) in ground.into_iter().zip(colours[ink]) {
                    palette.push(mixed(under, over, shade.into(), shades.into()));
                }
            }
            for (coverage, entry) in index[ink].iter_mut().enumerate() {
                let shade = (coverage * usize::from(shades) + 127) / 255;
                *entry = if shade == 0 {
                    0
                } else {
                    first + shade as u8 - 1
                };
            }
        }
        let [one, two, three] = [0, 1, 2].map(|i| self.inks[i].data());
        // Where inks meet, the one that covers more of the pixel; the later, where both cover it alike.
        let at = |i: usize| {
            let (one, two, three) = (one[i], two[i], three[i]);
            if three >= two && three >= one {
                index[2][usize::from(three)]
            } else if two >= one {
                index[1][usize::from(two)]
            } else {
                index[0][usize::from(one)]
            }
        };
        // Most of a drawing is ground.
        let mut pixels = vec![0u8; one.len() / 2];
        let empty = [0u8; 2 * STRETCH];
        for (stretch, out) in pixels.chunks_mut(STRETCH).enumerate() {
            let inked = 2 * STRETCH * stretch..(2 * STRETCH * stretch + 2 * out.len());
            let of = &empty[..inked.len()];
            if [one, two, three]
                .iter()
                .all(|ink| &ink[inked.clone()] == of)
            {
                continue;
            }
            for (pixel, left) in out.iter_mut().zip(inked.step_by(2)) {
                *pixel = (at(left) << 4) | at(left + 1);
            }
        }
        let mut out = Vec::with_capacity(16 * 1024);
        let mut encoder = png::Encoder::new(&mut out, self.width, self.height);
        encoder.set_color(png::ColorType::Indexed);
        encoder.set_depth(png::BitDepth::Four);
        encoder.set_palette(palette);
        encoder.set_deflate_compression(png::DeflateCompression::FdeflateUltraFast);
        encoder.set_filter(png::Filter::Up);
        let mut writer = encoder.write_header().ok()?;
        writer.write_image_data(&pixels).ok()?;
        writer.finish().ok()?;
        Some(out)
    }
}

/// `part` of `whole` from one value to another.
pub fn mixed(from: u8, to: u8, part: u32, whole: u32) -> u8 {
    let sum = u32::from(from) * (whole - part) + u32::from(to) * part;
    ((sum + whole / 2) / whole) as u8
}
