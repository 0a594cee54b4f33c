//! WebM: tags, attachments, chapters, titles and days are emptied in their place.

use super::{Cleaned, Stays};

/// The elements of a WebM file (RFC 9559) that hold others which are looked at.
const SEGMENT: u32 = 0x1853_8067;
const INFO: u32 = 0x1549_a966;
const TRACKS: u32 = 0x1654_ae6b;
const CLUSTER: u32 = 0x1f43_b675;
const TRACK_ENTRY: u32 = 0xae;
/// An element that says nothing.
const VOID: u8 = 0xec;

/// Empties a WebM file (RFC 8794, RFC 9559): tags, attachments, chapters, titles, days, the program that wrote it.
pub fn webm(bytes: &mut [u8]) -> Cleaned {
    let end = bytes.len();
    let mut may_tell = false;
    let whole = elements(bytes, 0, end, None, &mut may_tell).is_some();
    Cleaned { whole, may_tell }
}

/// The elements that stay, by the element they stand in.
fn element_stays(parent: Option<u32>, id: u32) -> Stays {
    let whole: &[u32] = match parent {
        // The head; whatever stands in it says how to read on.
        None => &[0x1a45_dfa3],
        // Where to find what; the list of places to jump to.
        Some(SEGMENT) => &[0x114d_9b74, 0x1c53_bb6b],
        // The scale of time, the length. The names of the programs are asked for by the standard, and are emptied as text.
        Some(INFO) => &[0x2a_d7b1, 0x4489],
        // The number, kind, codec, picture, sound and language of a track; not its name.
        Some(TRACK_ENTRY) => &[
            0xd7, 0x73c5, 0x83, 0xb9, 0x88, 0x55aa, 0x9c, 0x23_e383, 0x23_4e7a, 0x23_314f, 0x55ee,
            0x22_b59c, 0x22_b59d, 0x86, 0x63a2, 0x56aa, 0x56bb, 0xe0, 0xe1, 0x6d80, 0xaa, 0x6de7,
        ],
        Some(CLUSTER) => &[0xe7, 0xa7, 0xab, 0xa3, 0xa0],
        Some(_) => &[],
    };
    match (parent, id) {
        _ if whole.contains(&id) => Stays::Whole,
        (None, SEGMENT)
        | (Some(SEGMENT), INFO | TRACKS | CLUSTER)
        | (Some(TRACKS), TRACK_ENTRY) => Stays::Inside,
        _ => Stays::No,
    }
}

/// Empties the elements between two places; where the last of them ends. `None` where one cannot be read.
fn elements(
    bytes: &mut [u8],
    mut at: usize,
    end: usize,
    parent: Option<u32>,
    may_tell: &mut bool,
) -> Option<usize> {
    while at < end {
        let (id, id_length) = element_id(bytes, at)?;
        // A cluster of unknown length ends where the next part of the segment begins.
        if parent == Some(CLUSTER) && matches!(element_stays(Some(SEGMENT), id), Stays::Inside) {
            return Some(at);
        }
        let (size, size_length) = number(bytes, at + id_length)?;
        let start = at + id_length + size_length;
        let stop = match size {
            Some(size) => start
                .checked_add(usize::try_from(size).ok()?)
                .filter(|stop| *stop <= end)?,
            None if matches!(id, SEGMENT | CLUSTER) => end,
            None => return None,
        };
        // A track of data: buttons, or what was measured while filming (RFC 9559, 5.1.4.1.3).
        if id == TRACK_ENTRY && parent == Some(TRACKS) {
            let kind = child(&bytes[start..stop], 0x83);
            *may_tell |= !matches!(kind, Some([1 | 2 | 3 | 17]));
        }
        at = match element_stays(parent, id) {
            Stays::Whole => stop,
            Stays::Inside => {
                let read_to = elements(bytes, start, stop, Some(id), may_tell)?;
                if size.is_none() { read_to } else { stop }
            }
            // Programs refuse a file that lacks the names of those which wrote it.
            Stays::No if parent == Some(INFO) && matches!(id, 0x4d80 | 0x5741) => {
                bytes[start..stop].fill(b' ');
                stop
            }
            Stays::No => {
                empty(bytes, at, stop);
                stop
            }
        };
    }
    Some(at)
}

/// An element that says nothing, of the same length.
fn empty(bytes: &mut [u8], at: usize, stop: usize) {
    bytes[at..stop].fill(0);
    bytes[at] = VOID;
    let length = stop - at;
    if length >= 9 {
        bytes[at + 1..at + 9].copy_from_slice(&(1u64 << 56 | (length - 9) as u64).to_be_bytes());
    } else {
        bytes[at + 1] = 0x80 | (length - 2) as u8;
    }
}

/// An element's id with its length mark, and how many bytes it has.
fn element_id(bytes: &[u8], at: usize) -> Option<(u32, usize)> {
    let length = bytes.get(at)?.leading_zeros() as usize + 1;
    let id = bytes.get(at..at.checked_add(length).filter(|_| length <= 4)?)?;
    Some((
        id.iter().fold(0, |n, byte| n << 8 | u32::from(*byte)),
        length,
    ))
}

/// A length, and how many bytes it has; no length where it is not known.
fn number(bytes: &[u8], at: usize) -> Option<(Option<u64>, usize)> {
    let first = *bytes.get(at)?;
    let length = first.leading_zeros() as usize + 1;
    let all = bytes.get(at..at.checked_add(length).filter(|_| length <= 8)?)?;
    let value = all.iter().fold(0, |n, byte| n << 8 | u64::from(*byte));
    let mask = (1u64 << (7 * length)) - 1;
    Some(((value & mask != mask).then_some(value & mask), length))
}

/// The content of an element among its siblings.
fn child(bytes: &[u8], wanted: u32) -> Option<&[u8]> {
    let mut at = 0;
    while at < bytes.len() {
        let (id, id_length) = element_id(bytes, at)?;
        let (size, size_length) = number(bytes, at + id_length)?;
        let start = at + id_length + size_length;
        let stop = start.checked_add(usize::try_from(size?).ok()?)?;
        let body = bytes.get(start..stop)?;
        if id == wanted {
            return Some(body);
        }
        at = stop;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLACE: &[u8] = b"+52.5+013.4/";

    fn tells(bytes: &[u8]) -> bool {
        bytes.windows(5).any(|w| w == b"+52.5")
    }

    fn element(id: &[u8], body: &[u8]) -> Vec<u8> {
        let size = (1u64 << 56 | body.len() as u64).to_be_bytes();
        [id, &size, body].concat()
    }

    #[test]
    fn webm_loses_its_tags() {
        let short = |id: &[u8], body: &[u8]| [id, &[0x80 | body.len() as u8], body].concat();
        let tags = element(&[0x12, 0x54, 0xc3, 0x67], PLACE);
        let attached = element(&[0x19, 0x41, 0xa4, 0x69], PLACE);
        let info = element(
            &[0x15, 0x49, 0xa9, 0x66],
            &[
                short(&[0x2a, 0xd7, 0xb1], &[1, 2, 3]),
                short(&[0x7b, 0xa9], PLACE),
                short(&[0x57, 0x41], PLACE),
                short(&[0x44, 0x61], &[1; 8]),
            ]
            .concat(),
        );
        let tracks = |kind: u8| {
            element(
                &[0x16, 0x54, 0xae, 0x6b],
                &element(
                    &[0xae],
                    &[short(&[0x83], &[kind]), short(&[0x53, 0x6e], PLACE)].concat(),
                ),
            )
        };
        let cluster = [
            &[0x1f, 0x43, 0xb6, 0x75, 0xff][..],
            &short(&[0xa3], b"seen"),
        ]
        .concat();
        let build = |kind: u8| {
            let segment = [
                &info[..],
                &tracks(kind),
                &cluster,
                &element(&[VOID], PLACE),
                &cluster,
                &tags,
                &attached,
            ]
            .concat();
            [
                short(&[0x1a, 0x45, 0xdf, 0xa3], b"head"),
                element(&[0x18, 0x53, 0x80, 0x67], &segment),
            ]
            .concat()
        };
        let clip = build(1);
        let mut cleaned = clip.clone();
        let found = webm(&mut cleaned);
        assert!(found.whole && !found.may_tell, "{found:?}");
        assert!(tells(&clip) && !tells(&cleaned));
        assert_eq!(clip.len(), cleaned.len());
        assert_eq!(cleaned.windows(4).filter(|w| w == b"seen").count(), 2);
        let mut again = cleaned.clone();
        assert!(webm(&mut again).whole);
        assert_eq!(again, cleaned);
        assert!(webm(&mut build(0x21)).may_tell);
        assert!(!webm(&mut clip[..clip.len() - 1].to_vec()).whole);
    }
}
