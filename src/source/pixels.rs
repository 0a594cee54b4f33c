//! Whether a browser can show a photograph: its size, and whether its pixels can be read.

use super::raster::{self, Kind};
use std::io::Cursor;
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;
use zune_jpeg::zune_core::options::DecoderOptions;

/// Pictures of more pixels are not opened, by nobody: a small file can claim to be a large picture. Common practice, no source.
pub const MOST: usize = 64_000_000;

/// Why a photograph would not be seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Its width and height.
    TooLarge(usize, usize),
    Unreadable,
}

/// What is wrong with the pixels of a photograph, by decoding it. Nothing for clips.
pub fn fault(bytes: &[u8]) -> Option<Fault> {
    let kind = raster::kind(bytes)?;
    if matches!(kind, Kind::Clip | Kind::WebM) {
        return None;
    }
    let Some((width, height)) = size(bytes) else {
        return Some(Fault::Unreadable);
    };
    if width.saturating_mul(height) > MOST {
        return Some(Fault::TooLarge(width, height));
    }
    let read = match kind {
        Kind::Jpeg => jpeg(bytes),
        Kind::Png => png(bytes),
        Kind::WebP => webp(bytes),
        // No reader of these is part of the program.
        Kind::Gif | Kind::Clip | Kind::WebM => Some(()),
    };
    (read.is_none() || width * height == 0).then_some(Fault::Unreadable)
}

/// Width and height of a photograph in pixels, as its head says; `None` for clips, and where there is no such head.
pub fn size(bytes: &[u8]) -> Option<(usize, usize)> {
    match raster::kind(bytes)? {
        Kind::Jpeg => {
            let mut decoder = decoder(bytes);
            decoder.decode_headers().ok()?;
            decoder.dimensions()
        }
        // The first chunk of PNG (third edition, 11.2.1), whose check is not looked at here: what is claimed counts.
        Kind::Png => {
            let at = |i: usize| Some(u32::from_be_bytes(bytes.get(i..i + 4)?.try_into().ok()?));
            Some((at(16)? as usize, at(20)? as usize))
        }
        Kind::WebP => {
            let decoder = image_webp::WebPDecoder::new(Cursor::new(bytes)).ok()?;
            let (width, height) = decoder.dimensions();
            Some((width as usize, height as usize))
        }
        // The logical screen of GIF 89a, section 18: two numbers of two bytes, the low one first.
        Kind::Gif => {
            let at = |i: usize| Some(u16::from_le_bytes([*bytes.get(i)?, *bytes.get(i + 1)?]));
            Some((at(6)?.into(), at(8)?.into()))
        }
        Kind::Clip | Kind::WebM => None,
    }
}

fn decoder(bytes: &[u8]) -> JpegDecoder<ZCursor<&[u8]>> {
    let options = DecoderOptions::default()
        .set_use_unsafe(false)
        .set_max_width(1 << 16)
        .set_max_height(1 << 16);
    JpegDecoder::new_with_options(ZCursor::new(bytes), options)
}

fn jpeg(bytes: &[u8]) -> Option<()> {
    decoder(bytes).decode().ok().map(drop)
}

fn png(bytes: &[u8]) -> Option<()> {
    let mut reader = png::Decoder::new(Cursor::new(bytes)).read_info().ok()?;
    let mut pixels = vec![0; reader.output_buffer_size()?];
    reader.next_frame(&mut pixels).ok().map(drop)
}

fn webp(bytes: &[u8]) -> Option<()> {
    let mut decoder = image_webp::WebPDecoder::new(Cursor::new(bytes)).ok()?;
    let mut pixels = vec![0; decoder.output_buffer_size()?];
    decoder.read_image(&mut pixels).ok()
}
