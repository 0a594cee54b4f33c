//! Clips without what cameras, telephones and programs write beside them: the place, the device, the day. Kept is what is named
//! here because it is seen or heard; everything else is emptied in its place, so that every distance within the file stays.

mod webm;

pub use webm::webm;

use super::raster::{be16, be32};

/// What became of a clip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cleaned {
    /// Every part has the length that it says.
    pub whole: bool,
    /// It holds a track of data that could not be emptied: it may still say where it was taken.
    pub may_tell: bool,
}

/// Empties an ISO base media file (ISO/IEC 14496-12): boxes that are neither seen nor heard, and tracks of data with their
/// samples.
pub fn iso(bytes: &mut [u8]) -> Cleaned {
    let end = bytes.len();
    let mut found = Found::default();
    let whole = boxes(bytes, 0, end, None, &mut found).is_some();
    let mut may_tell = found.data_tracks > 0 && found.fragmented;
    for range in found.samples {
        match bytes.get_mut(range.0..range.1) {
            Some(sample) => sample.fill(0),
            None => may_tell = true,
        }
    }
    Cleaned { whole, may_tell }
}

/// Tracks of data that were come upon, and where their samples stand.
#[derive(Default)]
struct Found {
    samples: Vec<(usize, usize)>,
    data_tracks: usize,
    fragmented: bool,
}

/// Whether a box stays where it stands: some hold others that are looked at too.
enum Stays {
    Whole,
    Inside,
    No,
}

/// The boxes of the standard that change what is seen or heard, by the box they stand in.
fn stays(parent: Option<&[u8; 4]>, name: &[u8; 4]) -> Stays {
    let whole: &[&[u8; 4]] = match parent {
        None => &[
            b"ftyp", b"styp", b"mdat", b"sidx", b"ssix", b"mfra", b"pdin",
        ],
        Some(b"moov") => &[b"mvhd", b"iods"],
        Some(b"trak") => &[b"tkhd", b"edts", b"tref", b"trgr", b"tapt"],
        Some(b"mdia") => &[b"mdhd", b"hdlr", b"elng"],
        Some(b"minf") => &[
            b"vmhd", b"smhd", b"hmhd", b"sthd", b"nmhd", b"gmhd", b"dinf", b"hdlr",
        ],
        Some(b"stbl") => &[
            b"stsd", b"stts", b"ctts", b"cslg", b"stsc", b"stsz", b"stz2", b"stco", b"co64",
            b"stss", b"stsh", b"padb", b"stdp", b"sdtp", b"sbgp", b"sgpd", b"subs", b"saiz",
            b"saio", b"stps",
        ],
        Some(b"mvex") => &[b"mehd", b"trex", b"leva", b"trep"],
        Some(b"moof") => &[b"mfhd", b"pssh"],
        Some(b"traf") => &[
            b"tfhd", b"trun", b"tfdt", b"sbgp", b"sgpd", b"subs", b"saiz", b"saio", b"sdtp",
        ],
        Some(_) => &[],
    };
    if whole.contains(&name) {
        return Stays::Whole;
    }
    match (parent, name) {
        (None, b"moov" | b"moof")
        | (Some(b"moov"), b"trak" | b"mvex")
        | (Some(b"trak"), b"mdia")
        | (Some(b"mdia"), b"minf")
        | (Some(b"minf"), b"stbl")
        | (Some(b"moof"), b"traf") => Stays::Inside,
        _ => Stays::No,
    }
}

/// Empties the boxes between two places. `None` where one says a length that it cannot have.
fn boxes(
    bytes: &mut [u8],
    mut at: usize,
    end: usize,
    parent: Option<&[u8; 4]>,
    found: &mut Found,
) -> Option<()> {
    while at < end {
        // QuickTime ends a list of boxes by four bytes of zero.
        if parent.is_some() && end - at == 4 && bytes[at..end] == [0; 4] {
            return Some(());
        }
        let (start, stop) = extent(bytes, at, end)?;
        let name: [u8; 4] = bytes.get(at + 4..at + 8)?.try_into().ok()?;
        let mut keeps = stays(parent, &name);
        found.fragmented |= &name == b"moof";
        if &name == b"trak" && is_data(&bytes[start..stop]) {
            found.data_tracks += 1;
            match samples(&bytes[start..stop]) {
                Some(ranges) => found.samples.extend(ranges),
                None => found.fragmented = true,
            }
            keeps = Stays::No;
        }
        match keeps {
            Stays::Whole => {}
            Stays::Inside => boxes(bytes, start, stop, Some(&name), found)?,
            Stays::No => {
                bytes[at + 4..at + 8].copy_from_slice(b"free");
                bytes[start..stop].fill(0);
            }
        }
        at = stop;
    }
    Some(())
}

/// Whether a track is neither seen, heard nor read: its handler says so (8.4.3).
fn is_data(track: &[u8]) -> bool {
    let handler = inside(track, b"mdia").and_then(|mdia| inside(mdia, b"hdlr"));
    let kind = handler.and_then(|h| h.get(8..12));
    !matches!(
        kind,
        Some(b"vide" | b"soun" | b"text" | b"sbtl" | b"subt" | b"clcp" | b"auxv" | b"pict")
    )
}

/// Where the samples of a track stand in the file (8.7): by chunks, and how many samples are in each.
fn samples(track: &[u8]) -> Option<Vec<(usize, usize)>> {
    let table = inside(inside(inside(track, b"mdia")?, b"minf")?, b"stbl")?;
    let sizes = inside(table, b"stsz")?;
    let (each, count) = (be32(sizes, 4)? as usize, be32(sizes, 8)? as usize);
    let size = |i: usize| match each {
        0 => be32(sizes, 12 + 4 * i).map(|n| n as usize),
        each => Some(each),
    };
    let (offsets, wide) = match inside(table, b"stco") {
        Some(offsets) => (offsets, false),
        None => (inside(table, b"co64")?, true),
    };
    let offset = |i: usize| -> Option<usize> {
        match wide {
            false => be32(offsets, 8 + 4 * i).map(|n| n as usize),
            true => {
                let (high, low) = (be32(offsets, 8 + 8 * i)?, be32(offsets, 12 + 8 * i)?);
                (u64::from(high) << 32 | u64::from(low)).try_into().ok()
            }
        }
    };
    let runs = inside(table, b"stsc")?;
    let run_count = be32(runs, 4)? as usize;
    let chunks = be32(offsets, 4)? as usize;
    let (mut out, mut sample, mut run) = (Vec::new(), 0, 0);
    for chunk in 0..chunks {
        // The run whose first chunk, counted from 1, is the last that is not behind this one.
        while run + 1 < run_count && be32(runs, 8 + 12 * (run + 1))? as usize <= chunk + 1 {
            run += 1;
        }
        let in_chunk = be32(runs, 12 + 12 * run)? as usize;
        let from = offset(chunk)?;
        let mut to = from;
        for _ in 0..in_chunk.min(count - sample.min(count)) {
            to = to.checked_add(size(sample)?)?;
            sample += 1;
        }
        out.push((from, to));
    }
    (sample == count).then_some(out)
}

/// Width and height of a clip in pixels: those of its first track that is seen (8.3.2).
pub fn size(bytes: &[u8]) -> Option<(usize, usize)> {
    let moov = inside(bytes, b"moov")?;
    let mut rest = moov;
    while let Some((name, body, after)) = next_box(rest) {
        rest = after;
        let Some(head) = (name == b"trak").then(|| inside(body, b"tkhd")).flatten() else {
            continue;
        };
        let at = if head.first() == Some(&1) { 88 } else { 76 };
        // Fixed point, 16 bits before the point.
        let whole = |at: usize| Some(usize::from(be16(head, at)?));
        let (width, height) = (whole(at)?, whole(at + 4)?);
        if width > 0 && height > 0 {
            // A quarter turn in the matrix: its first number is 0.
            let turned = be32(head, at - 36)? == 0;
            return Some(if turned {
                (height, width)
            } else {
                (width, height)
            });
        }
    }
    None
}

fn inside<'a>(mut bytes: &'a [u8], wanted: &[u8; 4]) -> Option<&'a [u8]> {
    while let Some((name, body, after)) = next_box(bytes) {
        if name == wanted {
            return Some(body);
        }
        bytes = after;
    }
    None
}

fn next_box(bytes: &[u8]) -> Option<(&[u8], &[u8], &[u8])> {
    let (start, end) = extent(bytes, 0, bytes.len())?;
    Some((bytes.get(4..8)?, &bytes[start..end], &bytes[end..]))
}

/// Where a box's content starts and ends.
fn extent(bytes: &[u8], at: usize, end: usize) -> Option<(usize, usize)> {
    let (head, size) = match be32(bytes, at)? {
        0 => (8, end - at),
        1 => {
            let high = be32(bytes, at + 8)?;
            let low = be32(bytes, at + 12)?;
            (
                16,
                (u64::from(high) << 32 | u64::from(low)).try_into().ok()?,
            )
        }
        size => (8, size as usize),
    };
    let stop = at.checked_add(size)?;
    (size >= head && stop <= end).then_some((at + head, stop))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const PLACE: &[u8] = b"+52.5+013.4/";

    fn part(name: &[u8; 4], body: &[u8]) -> Vec<u8> {
        let size = (body.len() as u32 + 8).to_be_bytes();
        [&size[..], name, body].concat()
    }

    /// The same with its length in 64 bits.
    fn wide(name: &[u8; 4], body: &[u8]) -> Vec<u8> {
        let size = (body.len() as u64 + 16).to_be_bytes();
        [&1u32.to_be_bytes()[..], name, &size, body].concat()
    }

    fn tells(bytes: &[u8]) -> bool {
        bytes.windows(5).any(|w| w == b"+52.5")
    }

    fn handler(kind: &[u8; 4]) -> Vec<u8> {
        part(b"hdlr", &[&[0u8; 8][..], kind, &[0; 13]].concat())
    }

    fn picture_track() -> Vec<u8> {
        let mut head = vec![0u8; 84];
        head[40..44].copy_from_slice(&0x10000u32.to_be_bytes());
        head[76..78].copy_from_slice(&640u16.to_be_bytes());
        head[80..82].copy_from_slice(&360u16.to_be_bytes());
        let mdia = part(b"mdia", &handler(b"vide"));
        part(b"trak", &[part(b"tkhd", &head), mdia].concat())
    }

    /// A clip with something more in `moov` and something more at its top.
    fn clip(in_moov: &[u8], at_top: &[u8]) -> Vec<u8> {
        [
            part(b"ftyp", b"isom"),
            part(b"moov", &[&picture_track()[..], in_moov].concat()),
            at_top.to_vec(),
            part(b"mdat", b"seen"),
        ]
        .concat()
    }

    #[test]
    fn places_are_emptied_wherever_they_stand() {
        let udta = part(b"udta", &part(b"\xa9xyz", PLACE));
        let nothing: &[u8] = &[];
        let meta = part(b"meta", PLACE);
        let cases: Vec<(&str, Vec<u8>)> = vec![
            ("udta", clip(&udta, nothing)),
            ("64-bit udta", clip(&wide(b"udta", PLACE), nothing)),
            (
                "udta in 64-bit moov",
                [part(b"ftyp", b"isom"), wide(b"moov", &udta)].concat(),
            ),
            ("a box of a camera", clip(&part(b"gps ", PLACE), nothing)),
            ("room that is free", clip(nothing, &part(b"free", PLACE))),
            ("moof", clip(nothing, &part(b"moof", &udta))),
            ("traf", clip(nothing, &part(b"moof", &part(b"traf", &udta)))),
            ("meta", clip(&meta, &meta)),
            (
                "deep",
                clip(
                    &part(
                        b"trak",
                        &part(b"mdia", &[handler(b"vide"), part(b"minf", &udta)].concat()),
                    ),
                    nothing,
                ),
            ),
            (
                "mdia",
                clip(
                    &part(
                        b"trak",
                        &part(b"mdia", &[handler(b"soun"), udta.clone()].concat()),
                    ),
                    nothing,
                ),
            ),
            ("a box nobody knows", clip(nothing, &part(b"GPSx", PLACE))),
        ];
        for (what, clip) in cases {
            let mut cleaned = clip.clone();
            let found = iso(&mut cleaned);
            assert!(found.whole && !found.may_tell, "{what}");
            assert!(tells(&clip) && !tells(&cleaned), "{what}");
            assert_eq!(clip.len(), cleaned.len(), "{what}");
        }
        let mut cleaned = clip(&udta, nothing);
        iso(&mut cleaned);
        assert!(cleaned.ends_with(b"mdatseen"));
        assert_eq!(size(&cleaned), Some((640, 360)));
    }

    /// A track of what was measured while filming: its samples stand among the pictures.
    #[test]
    fn tracks_of_data_lose_their_samples() {
        let track = |offset: u32| {
            let numbers =
                |list: &[u32]| -> Vec<u8> { list.iter().flat_map(|n| n.to_be_bytes()).collect() };
            let table = [
                part(b"stsz", &numbers(&[0, 0, 2, 5, 7])),
                part(b"stsc", &numbers(&[0, 1, 1, 2, 1])),
                part(b"stco", &numbers(&[0, 1, offset])),
            ];
            let minf = part(b"minf", &part(b"stbl", &table.concat()));
            part(b"trak", &part(b"mdia", &[handler(b"meta"), minf].concat()))
        };
        let build = |offset: u32| {
            [
                part(b"ftyp", b"isom"),
                part(b"moov", &[picture_track(), track(offset)].concat()),
                part(b"mdat", &[b"seen", PLACE, b"heard"].concat()),
            ]
            .concat()
        };
        let at = build(0).windows(5).position(|w| w == b"+52.5");
        let mut clip = build(at.expect("it stands there") as u32);
        let found = iso(&mut clip);
        assert!(found.whole && !found.may_tell);
        assert!(!tells(&clip));
        assert!(clip.windows(4).any(|w| w == b"seen") && clip.ends_with(b"heard"));
        // In a fragmented clip the samples are told otherwise.
        let mut fragmented = [build(0), part(b"moof", &[])].concat();
        assert!(iso(&mut fragmented).may_tell);
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(500) })]

        #[test]
        fn broken_clips_never_panic(body in proptest::collection::vec(any::<u8>(), 0..200), at in 0usize..200, byte: u8) {
            let udta = part(b"udta", PLACE);
            for start in [b"\0\0\0\x08ftyp\0\0\0\x20moov".to_vec(), b"\x1a\x45\xdf\xa3\x80\x18\x53\x80\x67\xff".to_vec(), clip(&udta, &[])] {
                let mut file = [start, body.clone()].concat();
                if let Some(changed) = file.get_mut(at) {
                    *changed = byte;
                }
                let length = file.len();
                iso(&mut file);
                webm(&mut file);
                size(&file);
                prop_assert_eq!(file.len(), length);
            }
        }
    }
}
