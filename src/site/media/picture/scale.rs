//! Photographs in smaller widths: decoded, averaged over areas in whole numbers, turned upright and packed again. The same
//! bytes on every machine: no decoder below chooses its arithmetic by the processor.

use crate::source::pixels;
use crate::source::raster::{self, Kind};
use std::collections::HashMap;
use std::io::Cursor;
use std::sync::{Arc, LazyLock, Mutex};
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::colorspace::ColorSpace;
use zune_jpeg::zune_core::options::DecoderOptions;

/// Of 100: photographs of people under cues look the same, at a third of the weight.
const QUALITY: u8 = 80;

/// A picture in one smaller width.
#[derive(Clone)]
pub struct Scaled {
    pub width: u32,
    pub ending: &'static str,
    pub bytes: Arc<Vec<u8>>,
}

/// Pixels with 1 (grey), 2 (grey, opacity), 3 (colour) or 4 (colour, opacity) channels.
struct Raster {
    width: usize,
    height: usize,
    channels: usize,
    pixels: Vec<u8>,
    profile: Option<Vec<u8>>,
}

/// Width and height in pixels as a browser shows them, turned as the camera says.
pub fn seen_size(bytes: &[u8]) -> Option<(usize, usize)> {
    let (width, height) = pixels::size(bytes)?;
    Some(match raster::orientation(bytes) >= 5 {
        true => (height, width),
        false => (width, height),
    })
}

/// What was made of a picture in this run, by the hash of its bytes: whoever rehearses publishes the same pictures at each save.
static MADE: LazyLock<Mutex<HashMap<[u8; 32], Vec<Scaled>>>> = LazyLock::new(Mutex::default);

/// The picture in those widths that are clearly smaller than its own, and whose file is smaller too.
pub fn scaled(bytes: &[u8], widths: &[u32]) -> Vec<Scaled> {
    let wanted = |(width, _): (usize, usize)| -> Vec<u32> {
        let clearly = |w: &&u32| (**w as usize) * 5 <= width * 4;
        widths.iter().filter(clearly).copied().collect()
    };
    let widths = seen_size(bytes)
        .filter(|(w, h)| w.saturating_mul(*h) <= pixels::MOST)
        .map_or_else(Vec::new, wanted);
    if widths.is_empty() {
        return Vec::new();
    }
    let hash = *blake3::hash(bytes).as_bytes();
    if let Ok(made) = MADE.lock()
        && let Some(scaled) = made.get(&hash)
    {
        return scaled.clone();
    }
    let scaled = make(bytes, &widths).unwrap_or_default();
    if let Ok(mut made) = MADE.lock() {
        made.insert(hash, scaled.clone());
    }
    scaled
}

fn make(bytes: &[u8], widths: &[u32]) -> Option<Vec<Scaled>> {
    let kind = raster::kind(bytes)?;
    let (whole, animated) = decode(kind, bytes)?;
    if animated {
        return None;
    }
    let way = raster::orientation(bytes);
    let mut out = Vec::new();
    for width in widths {
        let small = upright(shrunk(&whole, *width as usize, way >= 5)?, way);
        let (ending, packed) = pack(kind, &small)?;
        if packed.len() < bytes.len() {
            out.push(Scaled {
                width: *width,
                ending,
                bytes: Arc::new(packed),
            });
        }
    }
    Some(out)
}

/// The pixels, and whether there are more pictures after the first.
fn decode(kind: Kind, bytes: &[u8]) -> Option<(Raster, bool)> {
    match kind {
        Kind::Jpeg => Some((jpeg(bytes)?, false)),
        Kind::Png => png(bytes),
        Kind::WebP => webp(bytes),
        Kind::Gif | Kind::Clip | Kind::WebM => None,
    }
}

fn jpeg(bytes: &[u8]) -> Option<Raster> {
    let options = DecoderOptions::default()
        .set_use_unsafe(false)
        .set_strict_mode(true)
        .set_max_width(1 << 16)
        .set_max_height(1 << 16);
    let mut decoder = JpegDecoder::new_with_options(ZCursor::new(bytes), options);
    decoder.decode_headers().ok()?;
    let channels = match decoder.input_colorspace()? {
        ColorSpace::Luma => 1,
        ColorSpace::YCbCr | ColorSpace::RGB => 3,
        // Four inks: a printer's picture, rare enough to stand as it is.
        _ => return None,
    };
    let to = if channels == 1 {
        ColorSpace::Luma
    } else {
        ColorSpace::RGB
    };
    decoder.set_options(options.jpeg_set_out_colorspace(to));
    let profile = decoder.icc_profile();
    let (width, height) = decoder.dimensions()?;
    let pixels = decoder.decode().ok()?;
    sound(Raster {
        width,
        height,
        channels,
        pixels,
        profile,
    })
}

fn png(bytes: &[u8]) -> Option<(Raster, bool)> {
    let mut decoder = png::Decoder::new(Cursor::new(bytes));
    decoder.set_transformations(png::Transformations::EXPAND | png::Transformations::STRIP_16);
    let mut reader = decoder.read_info().ok()?;
    let info = reader.info();
    // Colours that are told by numbers of their own would be lost.
    if info.coding_independent_code_points.is_some()
        || info.gama_chunk.is_some() && info.srgb.is_none()
    {
        return None;
    }
    let animated = info.animation_control.is_some();
    let profile = info.icc_profile.as_ref().map(|p| p.to_vec());
    let mut pixels = vec![0; reader.output_buffer_size()?];
    let frame = reader.next_frame(&mut pixels).ok()?;
    pixels.truncate(frame.buffer_size());
    let raster = sound(Raster {
        width: frame.width as usize,
        height: frame.height as usize,
        channels: frame.color_type.samples(),
        pixels,
        profile,
    })?;
    Some((raster, animated))
}

fn webp(bytes: &[u8]) -> Option<(Raster, bool)> {
    let mut decoder = image_webp::WebPDecoder::new(Cursor::new(bytes)).ok()?;
    let animated = decoder.is_animated();
    let (width, height) = decoder.dimensions();
    let channels = if decoder.has_alpha() { 4 } else { 3 };
    let profile = decoder.icc_profile().ok()?;
    let mut pixels = vec![0; decoder.output_buffer_size()?];
    decoder.read_image(&mut pixels).ok()?;
    let raster = sound(Raster {
        width: width as usize,
        height: height as usize,
        channels,
        pixels,
        profile,
    })?;
    Some((raster, animated))
}

fn sound(raster: Raster) -> Option<Raster> {
    let expected = raster.width * raster.height * raster.channels;
    (expected > 0 && raster.pixels.len() == expected).then_some(raster)
}

/// The picture at a width, or at a height where it will be turned by a quarter, each pixel the mean of the area under it.
fn shrunk(from: &Raster, to: usize, quarter: bool) -> Option<Raster> {
    let other = |side: usize, by: usize| other_side(side, to, by);
    let (width, height) = if quarter {
        (other(from.width, from.height), to)
    } else {
        (to, other(from.height, from.width))
    };
    let n = from.channels;
    let clear = n == 2 || n == 4;
    let across = spans(from.width, width);
    let down = spans(from.height, height);
    let mut out = Vec::with_capacity(width * height * n);
    // One row of sums, by how much of each source row lies under the new one.
    let mut sums = vec![0u64; width * n];
    let mut row = vec![0u64; width * n];
    let mut next = 0;
    let area = (from.width * from.height) as u64;
    for under in &down {
        sums.fill(0);
        for (y, part) in under {
            if *y + 1 > next {
                let start = y * from.width * n;
                flat(
                    &from.pixels[start..start + from.width * n],
                    n,
                    &across,
                    &mut row,
                );
                next = y + 1;
            }
            sums.iter_mut()
                .zip(&row)
                .for_each(|(sum, value)| *sum += value * part);
        }
        for pixel in sums.chunks_exact(n) {
            let opacity = pixel[n - 1];
            for (i, sum) in pixel.iter().enumerate() {
                let value = match (clear, i + 1 == n) {
                    // Colours are sums weighed by opacity.
                    (true, false) if opacity > 0 => (sum + opacity / 2) / opacity,
                    (true, false) => 0,
                    _ => (sum + area / 2) / area,
                };
                out.push(value.min(255) as u8);
            }
        }
    }
    sound(Raster {
        width,
        height,
        channels: n,
        pixels: out,
        profile: from.profile.clone(),
    })
}

/// A side of a picture whose other side goes from `by` to `to`.
pub fn other_side(side: usize, to: usize, by: usize) -> usize {
    ((side * to + by / 2) / by).max(1)
}

/// For each new place the old ones under it, with how much of each; the parts of one new place add up to `from`.
fn spans(from: usize, to: usize) -> Vec<Vec<(usize, u64)>> {
    (0..to)
        .map(|i| {
            let (start, end) = (i * from, (i + 1) * from);
            (start / to..end.div_ceil(to))
                .map(|old| {
                    let part = end.min((old + 1) * to) - start.max(old * to);
                    (old, part as u64)
                })
                .collect()
        })
        .collect()
}

/// One row, averaged across.
fn flat(row: &[u8], n: usize, across: &[Vec<(usize, u64)>], out: &mut [u64]) {
    let clear = n == 2 || n == 4;
    for (under, sums) in across.iter().zip(out.chunks_exact_mut(n)) {
        sums.fill(0);
        for (x, part) in under {
            let pixel = &row[x * n..x * n + n];
            let weight = if clear {
                part * u64::from(pixel[n - 1])
            } else {
                *part
            };
            for (i, (sum, value)) in sums.iter_mut().zip(pixel).enumerate() {
                if clear && i + 1 == n {
                    *sum += weight;
                } else {
                    *sum += weight * u64::from(*value);
                }
            }
        }
    }
}

/// The picture turned and mirrored as its orientation asks (Exif 2.32, tag 274).
fn upright(from: Raster, way: u8) -> Raster {
    if way < 2 {
        return from;
    }
    let (w, h, n) = (from.width, from.height, from.channels);
    let (width, height) = if way >= 5 { (h, w) } else { (w, h) };
    let mut pixels = Vec::with_capacity(from.pixels.len());
    for y in 0..height {
        for x in 0..width {
            let (old_x, old_y) = match way {
                2 => (w - 1 - x, y),
                3 => (w - 1 - x, h - 1 - y),
                4 => (x, h - 1 - y),
                5 => (y, x),
                6 => (y, h - 1 - x),
                7 => (w - 1 - y, h - 1 - x),
                _ => (w - 1 - y, x),
            };
            let at = (old_y * w + old_x) * n;
            pixels.extend_from_slice(&from.pixels[at..at + n]);
        }
    }
    Raster {
        width,
        height,
        channels: n,
        pixels,
        profile: from.profile,
    }
}

/// A file's ending and its bytes. Photographs without opacity become JPEG, as WebP can be packed without loss alone.
fn pack(kind: Kind, small: &Raster) -> Option<(&'static str, Vec<u8>)> {
    let mut out = Vec::new();
    let (width, height) = (small.width as u32, small.height as u32);
    if kind == Kind::Png {
        let mut info = png::Info::with_size(width, height);
        info.color_type = match small.channels {
            1 => png::ColorType::Grayscale,
            2 => png::ColorType::GrayscaleAlpha,
            3 => png::ColorType::Rgb,
            _ => png::ColorType::Rgba,
        };
        info.bit_depth = png::BitDepth::Eight;
        info.icc_profile = small.profile.clone().map(Into::into);
        let mut encoder = png::Encoder::with_info(&mut out, info).ok()?;
        encoder.set_deflate_compression(png::DeflateCompression::Level(6));
        encoder.set_filter(png::Filter::Adaptive);
        let mut writer = encoder.write_header().ok()?;
        writer.write_image_data(&small.pixels).ok()?;
        writer.finish().ok()?;
        return Some(("png", out));
    }
    if small.channels == 4 {
        let mut encoder = image_webp::WebPEncoder::new(&mut out);
        if let Some(profile) = &small.profile {
            encoder.set_icc_profile(profile.clone());
        }
        encoder
            .encode(&small.pixels, width, height, image_webp::ColorType::Rgba8)
            .ok()?;
        return Some(("webp", out));
    }
    let mut encoder = jpeg_encoder::Encoder::new(&mut out, QUALITY);
    // Never with tables of its own: together with halved colours its files were read back wrongly.
    encoder.set_sampling_factor(jpeg_encoder::SamplingFactor::F_2_2);
    if let Some(profile) = &small.profile {
        encoder.add_icc_profile(profile).ok()?;
    }
    let colours = if small.channels == 1 {
        jpeg_encoder::ColorType::Luma
    } else {
        jpeg_encoder::ColorType::Rgb
    };
    let side = |n: usize| u16::try_from(n).ok();
    encoder
        .encode(
            &small.pixels,
            side(small.width)?,
            side(small.height)?,
            colours,
        )
        .ok()?;
    Some(("jpg", out))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn raster(width: usize, height: usize, channels: usize, pixels: &[u8]) -> Raster {
        Raster {
            width,
            height,
            channels,
            pixels: pixels.to_vec(),
            profile: None,
        }
    }

    #[test]
    fn a_new_pixel_is_the_mean_of_the_area_under_it() {
        let six = raster(3, 2, 1, &[0, 30, 60, 90, 120, 150]);
        let small = shrunk(&six, 1, false).expect("it can be shrunk");
        assert_eq!((small.height, small.pixels), (1, vec![75]));
        let two = shrunk(&raster(3, 1, 1, &[0, 90, 255]), 2, false).expect("it can be shrunk");
        assert_eq!(two.pixels, [30, 200]);
        // What cannot be seen has no colour to give.
        let clear = raster(2, 1, 4, &[200, 100, 50, 255, 9, 9, 9, 0]);
        let one = shrunk(&clear, 1, false).expect("it can be shrunk");
        assert_eq!(one.pixels, [200, 100, 50, 128]);
    }

    #[test]
    fn every_orientation_is_turned_upright() {
        // Exif 2.32: the stored first row and first column, as they are seen.
        let stored = [1, 2, 3, 4, 5, 6];
        let seen: [(u8, usize, [u8; 6]); 8] = [
            (1, 3, [1, 2, 3, 4, 5, 6]),
            (2, 3, [3, 2, 1, 6, 5, 4]),
            (3, 3, [6, 5, 4, 3, 2, 1]),
            (4, 3, [4, 5, 6, 1, 2, 3]),
            (5, 2, [1, 4, 2, 5, 3, 6]),
            (6, 2, [4, 1, 5, 2, 6, 3]),
            (7, 2, [6, 3, 5, 2, 4, 1]),
            (8, 2, [3, 6, 2, 5, 1, 4]),
        ];
        for (way, width, pixels) in seen {
            let up = upright(raster(3, 2, 1, &stored), way);
            assert_eq!((up.width, up.pixels), (width, pixels.to_vec()), "{way}");
        }
    }
}
