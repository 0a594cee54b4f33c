//! Photographs and clips without what cameras write beside them: the place, the device, the day. Nothing is drawn again; the
//! parts of the file are told apart, and only those that change what is seen are kept.

use super::clip;

/// The kinds of raster picture, by their first bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    Jpeg,
    Png,
    WebP,
    Gif,
    /// A clip: ISO base media (MP4).
    Clip,
    /// A clip: WebM.
    WebM,
}

/// A file with only what is seen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clean {
    pub bytes: Vec<u8>,
    /// How the picture lies, as cameras say it: 1 to 8 (Exif 2.32, tag 274).
    pub orientation: u8,
    /// Nothing is missing at its end, and every part has the length that it says.
    pub whole: bool,
    /// It holds data that could not be emptied: it may still say where it was taken.
    pub may_tell: bool,
}

/// What a file is, whatever its name says.
pub fn kind(bytes: &[u8]) -> Option<Kind> {
    match bytes {
        [0xff, 0xd8, 0xff, ..] => Some(Kind::Jpeg),
        [0x89, b'P', b'N', b'G', 0x0d, 0x0a, 0x1a, 0x0a, ..] => Some(Kind::Png),
        [b'G', b'I', b'F', b'8', b'7' | b'9', b'a', ..] => Some(Kind::Gif),
        [0x1a, 0x45, 0xdf, 0xa3, ..] => Some(Kind::WebM),
        [
            b'R',
            b'I',
            b'F',
            b'F',
            _,
            _,
            _,
            _,
            b'W',
            b'E',
            b'B',
            b'P',
            ..,
        ] => Some(Kind::WebP),
        [_, _, _, _, b'f', b't', b'y', b'p', rest @ ..] => {
            // Still pictures share the clips' container; they are not read here.
            let still = [&b"avif"[..], b"avis", b"heic", b"heix", b"mif1", b"msf1"];
            (!still.iter().any(|brand| rest.starts_with(brand))).then_some(Kind::Clip)
        }
        _ => None,
    }
}

/// A file without its place. Of a broken one everything before the break is kept.
pub fn clean(bytes: &[u8]) -> Clean {
    let mut out = Clean {
        bytes: Vec::with_capacity(bytes.len()),
        orientation: 1,
        whole: false,
        may_tell: false,
    };
    let whole = match kind(bytes) {
        Some(Kind::Jpeg) => jpeg(bytes, &mut out),
        Some(Kind::Png) => png(bytes, &mut out),
        Some(Kind::WebP) => webp(bytes, &mut out),
        Some(Kind::Gif) => gif(bytes, &mut out),
        Some(kind @ (Kind::Clip | Kind::WebM)) => {
            out.bytes.extend_from_slice(bytes);
            let found = match kind {
                Kind::Clip => clip::iso(&mut out.bytes),
                _ => clip::webm(&mut out.bytes),
            };
            out.may_tell = found.may_tell;
            found.whole.then_some(())
        }
        None => {
            out.bytes.extend_from_slice(bytes);
            Some(())
        }
    };
    out.whole = whole.is_some();
    out
}

/// How a picture lies. In a photograph that stands near the start.
pub fn orientation(bytes: &[u8]) -> u8 {
    const START: usize = 1 << 18;
    match kind(bytes) {
        Some(Kind::Jpeg) => clean(&bytes[..bytes.len().min(START)]).orientation,
        Some(Kind::Png | Kind::WebP) => clean(bytes).orientation,
        _ => 1,
    }
}

/// ITU-T T.81, B.1.1: kept are the picture's own segments, JFIF, the colour profile and the colour transform. What follows the
/// end of the picture (a second picture, a clip) is gone.
fn jpeg(bytes: &[u8], out: &mut Clean) -> Option<()> {
    out.bytes.extend_from_slice(&[0xff, 0xd8]);
    let mut at = 2;
    loop {
        if *bytes.get(at)? != 0xff {
            return None;
        }
        let marker = *bytes.get(at + 1)?;
        if marker == 0xff {
            at += 1;
            continue;
        }
        if matches!(marker, 0x01 | 0xd0..=0xd8) {
            at += 2;
            continue;
        }
        if marker == 0xd9 {
            out.bytes.extend_from_slice(&[0xff, 0xd9]);
            return Some(());
        }
        let length = usize::from(be16(bytes, at + 2)?).max(2);
        let segment = bytes.get(at..at + 2 + length)?;
        let says = &segment[4..];
        match marker {
            0xe1 => {
                let found = says.strip_prefix(b"Exif\0\0").and_then(turned);
                if let Some(way) = found.filter(|_| out.orientation == 1) {
                    out.orientation = way;
                    out.bytes.extend_from_slice(&[0xff, 0xe1, 0, 34]);
                    out.bytes.extend_from_slice(b"Exif\0\0");
                    out.bytes.extend_from_slice(&exif(way));
                }
            }
            0xe2 if !says.starts_with(b"ICC_PROFILE\0") => {}
            0xe3..=0xed | 0xef | 0xfe => {}
            _ => out.bytes.extend_from_slice(segment),
        }
        at += 2 + length;
        if marker == 0xda {
            let scan = &bytes[at..];
            let next = scan
                .windows(2)
                .position(|w| w[0] == 0xff && !matches!(w[1], 0 | 0xd0..=0xd7 | 0xff));
            let taken = next.unwrap_or(scan.len());
            out.bytes.extend_from_slice(&scan[..taken]);
            next?;
            at += taken;
        }
    }
}

/// PNG, third edition, 5 and 11: the chunks that change what is seen.
fn png(bytes: &[u8], out: &mut Clean) -> Option<()> {
    const SEEN: &[&[u8; 4]] = &[
        b"tRNS", b"gAMA", b"cHRM", b"sRGB", b"iCCP", b"sBIT", b"bKGD", b"pHYs", b"cICP", b"mDCV",
        b"cLLI", b"acTL", b"fcTL", b"fdAT",
    ];
    out.bytes.extend_from_slice(&bytes[..8]);
    let mut at = 8;
    loop {
        let length = be32(bytes, at)? as usize;
        let chunk = bytes.get(at..at.checked_add(length)?.checked_add(12)?)?;
        let name = &chunk[4..8];
        if name == b"eXIf" {
            if let Some(way) = turned(&chunk[8..8 + length]) {
                out.orientation = way;
                let mut body = b"eXIf".to_vec();
                body.extend_from_slice(&exif(way));
                out.bytes.extend_from_slice(&26u32.to_be_bytes());
                out.bytes.extend_from_slice(&body);
                out.bytes.extend_from_slice(&crc(&body).to_be_bytes());
            }
        } else if name[0].is_ascii_uppercase() || SEEN.iter().any(|s| &s[..] == name) {
            out.bytes.extend_from_slice(chunk);
        }
        if name == b"IEND" {
            return Some(());
        }
        at += chunk.len();
    }
}

/// RFC 9649, 2.7: the chunks that change what is seen.
fn webp(bytes: &[u8], out: &mut Clean) -> Option<()> {
    let end = (le32(bytes, 4)? as usize).checked_add(8)?;
    out.bytes.extend_from_slice(&bytes[..12]);
    let mut at = 12;
    let mut flags = None;
    let mut whole = Some(());
    while at + 8 <= end.min(bytes.len()) {
        let length = le32(bytes, at + 4)? as usize;
        let stop = at + 8 + length;
        let Some(chunk) = bytes.get(at..stop) else {
            whole = None;
            break;
        };
        match &chunk[..4] {
            b"EXIF" => {
                let data = &chunk[8..];
                let data = data.strip_prefix(b"Exif\0\0").unwrap_or(data);
                if let Some(way) = turned(data) {
                    out.orientation = way;
                    out.bytes.extend_from_slice(b"EXIF\x1a\0\0\0");
                    out.bytes.extend_from_slice(&exif(way));
                }
            }
            b"VP8X" | b"VP8 " | b"VP8L" | b"ALPH" | b"ANIM" | b"ANMF" | b"ICCP" => {
                if &chunk[..4] == b"VP8X" && length > 0 {
                    flags = Some(out.bytes.len() + 8);
                }
                out.bytes.extend_from_slice(chunk);
                if length % 2 == 1 {
                    out.bytes.push(0);
                }
            }
            _ => {}
        }
        at = stop + length % 2;
    }
    if let Some(flags) = flags {
        out.bytes[flags] &= !0x0c;
        if out.orientation != 1 {
            out.bytes[flags] |= 0x08;
        }
    }
    let size = (out.bytes.len() - 8) as u32;
    out.bytes[4..8].copy_from_slice(&size.to_le_bytes());
    whole.filter(|_| end <= bytes.len() && out.bytes.len() > 12)
}

/// GIF89a, 12 to 26: without comments, and without the data of other programs but the count of repeats.
fn gif(bytes: &[u8], out: &mut Clean) -> Option<()> {
    let table = |flags: u8| {
        if flags & 0x80 == 0 {
            0
        } else {
            3 << ((flags & 7) + 1)
        }
    };
    let mut at = 13 + table(*bytes.get(10)?);
    out.bytes.extend_from_slice(bytes.get(..at)?);
    loop {
        let start = at;
        let mut keep = true;
        match *bytes.get(at)? {
            0x3b => {
                out.bytes.push(0x3b);
                return Some(());
            }
            0x21 => {
                let label = *bytes.get(at + 1)?;
                let by = bytes.get(at + 3..at + 14).unwrap_or(&[]);
                let repeats = by == b"NETSCAPE2.0" || by == b"ANIMEXTS1.0";
                keep = label != 0xfe && (label != 0xff || repeats);
                at += 2;
            }
            0x2c => at += 11 + table(*bytes.get(at + 9)?),
            _ => return None,
        }
        loop {
            let length = usize::from(*bytes.get(at)?);
            at += 1 + length;
            if length == 0 {
                break;
            }
        }
        let block = bytes.get(start..at)?;
        if keep {
            out.bytes.extend_from_slice(block);
        }
    }
}

/// The orientation in Exif data, where it says anything but the usual.
fn turned(tiff: &[u8]) -> Option<u8> {
    let little = tiff.starts_with(b"II");
    let two = |at: usize| {
        let pair: [u8; 2] = tiff.get(at..at.checked_add(2)?)?.try_into().ok()?;
        Some(if little {
            u16::from_le_bytes(pair)
        } else {
            u16::from_be_bytes(pair)
        })
    };
    let (high, low) = if little { (6, 4) } else { (4, 6) };
    let list = (usize::from(two(high)?) << 16) | usize::from(two(low)?);
    let count = usize::from(two(list)?);
    let entry = (0..count)
        .map(|i| list + 2 + 12 * i)
        .find(|at| two(*at) == Some(0x0112))?;
    let way = two(entry + 8)?;
    (2..=8).contains(&way).then_some(way as u8)
}

/// Exif data that hold the orientation and nothing else.
fn exif(way: u8) -> [u8; 26] {
    let mut out = *b"MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\0\0\0\0\0\0\0";
    out[19] = way;
    out
}

/// The check of a PNG chunk (PNG, third edition, annex D).
fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |crc, _| {
            (crc >> 1) ^ (0xedb8_8320 & (crc & 1).wrapping_neg())
        })
    })
}

pub(super) fn be16(bytes: &[u8], at: usize) -> Option<u16> {
    let pair = bytes.get(at..at.checked_add(2)?)?;
    Some(u16::from_be_bytes(pair.try_into().ok()?))
}

pub(super) fn be32(bytes: &[u8], at: usize) -> Option<u32> {
    let four = bytes.get(at..at.checked_add(4)?)?;
    Some(u32::from_be_bytes(four.try_into().ok()?))
}

fn le32(bytes: &[u8], at: usize) -> Option<u32> {
    be32(bytes, at).map(u32::swap_bytes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn photographs_lose_their_location() {
        let jpeg = [
            &[0xff, 0xd8][..],
            &[0xff, 0xe0, 0, 4, 1, 2],
            &[0xff, 0xe1, 0, 6, b'E', b'x', b'i', b'f'],
            &[0xff, 0xe2, 0, 6, b'M', b'P', b'F', 0],
            &[0xff, 0xda, 0, 2, 9, 0xff, 0, 9],
            &[0xff, 0xd9],
            b"a clip behind the picture",
        ]
        .concat();
        let cleaned = clean(&jpeg);
        assert!(cleaned.whole);
        let expected = [
            &[0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2][..],
            &[0xff, 0xda, 0, 2, 9, 0xff, 0, 9, 0xff, 0xd9],
        ]
        .concat();
        assert_eq!(cleaned.bytes, expected);
        let short = clean(&jpeg[..30]);
        assert!(!short.whole && short.bytes.ends_with(&[0xff, 0xda, 0, 2, 9, 0xff]));
    }

    #[test]
    fn the_orientation_alone_is_kept() {
        assert_eq!(turned(&exif(6)), Some(6));
        assert_eq!(turned(&exif(1)), None);
        let little = b"II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0\x08\0\0\0\0\0\0\0";
        assert_eq!(turned(little), Some(8));
        assert_eq!(crc(b"IEND"), 0xae42_6082);
    }

    proptest! {
        #[test]
        fn broken_files_never_panic(start in 0usize..5, body in proptest::collection::vec(any::<u8>(), 0..300)) {
            let starts: [&[u8]; 5] = [
                b"\xff\xd8\xff\xe1", b"\x89PNG\r\n\x1a\n", b"RIFF\x40\0\0\0WEBPEXIF", b"GIF89a\x01\0\x01\0\x80", b"\0\0\0\x08ftyp\0\0\0\x20moov",
            ];
            let file = [starts[start], &body].concat();
            let once = clean(&file);
            prop_assert!(once.bytes.len() <= file.len() + 48);
        }
    }
}
