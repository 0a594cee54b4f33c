//! Pictures of the site itself, for places that show a link with a picture (the Open Graph protocol) and for the icons of an
//! installed site: one plumb line, level rungs at the stages of a chain, chalk on slate, the school's accent.
//!
//! A card says in its picture what the page says in words. It names a skill, never a movement by itself, and a skill whose goal
//! is cautioned bears its signal word.

mod letters;
mod pen;

use crate::curriculum::{MovementIx, Owner, SkillIx};
use crate::site::material::{Item, Material};
use crate::site::media::picture;
use crate::site::names::stage_words;
use letters::Letters;
use pen::{Colour, Pen, mixed};
use serde::Serialize;
use std::collections::BTreeMap;
use tiny_skia::{Path, PathBuilder, Rect};

const WIDTH: u32 = 1200;
const HEIGHT: u32 = 630;
const SLATE: Colour = [0x20, 0x26, 0x2b];
const CHALK: Colour = [0xee, 0xec, 0xe4];
const FAINT: Colour = [0x9d, 0xa3, 0xa4];
const ACCENT: Colour = [0xb4, 0x47, 0x2b];

/// The inks; the later lies on top.
const CHALKED: usize = 0;
const FAINTLY: usize = 1;
const ACCENTED: usize = 2;

/// Where the plumb line hangs, and from where to where.
const LINE: f32 = 985.0;
const TOP: f32 = 56.0;
const BOTTOM: f32 = 566.0;
/// The lines of text.
const LEFT: f32 = 72.0;
const MEASURE: f32 = 700.0;

/// Sizes of the icons that an installed site has (W3C Web Application Manifest).
pub const ICONS: &[(u32, bool)] = &[(192, false), (512, false), (512, true)];

/// The path of a card.
pub fn path(site: &Material<'_>, of: Option<SkillIx>) -> String {
    match of {
        Some(ix) => format!("cards/{}.png", site.curriculum.skill(ix).id),
        // No skill can be called so: it is the name of a fixed page.
        None => "cards/index.png".into(),
    }
}

/// The path of an icon; a maskable one may be cut to any shape.
pub fn icon_path(size: u32, maskable: bool) -> String {
    let kind = if maskable { "maskable" } else { "icon" };
    format!("icons/{kind}-{size}.png")
}

/// The picture of a page, as Open Graph asks for it.
#[derive(Serialize)]
pub struct Shared {
    /// From the site's root.
    src: String,
    width: usize,
    height: usize,
    alt: String,
    kind: &'static str,
    /// The signal word that stands beside the page's title.
    signal: Option<String>,
}

/// The first picture of a movement's own that every reader of links can show, else the card of its first skill, else the
/// school's.
pub fn shared(site: &Material<'_>, item: &Item) -> Shared {
    let of_movement = |ix: MovementIx| site.chains.skills_of[ix.at()].first().copied();
    let skill = match item {
        Item::Skill(ix) | Item::SkillTest(ix) | Item::Booklet(Some(ix)) => Some(*ix),
        Item::Movement(ix) => of_movement(*ix),
        Item::Redirect(_, Owner::Skill(ix)) => Some(*ix),
        Item::Redirect(_, Owner::Movement(ix)) => of_movement(*ix),
        _ => None,
    };
    let signal = match item {
        Item::Movement(ix) | Item::Redirect(_, Owner::Movement(ix)) => site.links.mark(*ix),
        Item::Skill(ix) | Item::SkillTest(ix) => {
            site.links.mark(site.curriculum.skill(*ix).goal.movement)
        }
        _ => None,
    }
    .map(|m| m.word.clone());
    if let Item::Movement(ix) = item
        && let Some(own) = own_picture(site, *ix, &signal)
    {
        return own;
    }
    Shared {
        signal,
        src: path(site, skill),
        width: WIDTH as usize,
        height: HEIGHT as usize,
        alt: alt(site, skill),
        kind: "image/png",
    }
}

fn own_picture(site: &Material<'_>, ix: MovementIx, signal: &Option<String>) -> Option<Shared> {
    site.curriculum
        .movement(ix)
        .pictures()
        .iter()
        .find_map(|p| {
            let (src, width, height, kind) = picture::for_links(site, &p.file)?;
            Some(Shared {
                src,
                width,
                height,
                alt: p.alt.clone(),
                kind,
                signal: signal.clone(),
            })
        })
}

/// What a card shows, in words.
fn alt(site: &Material<'_>, of: Option<SkillIx>) -> String {
    let school = &site.curriculum.school().name;
    match of {
        Some(ix) => {
            let skill = site.curriculum.skill(ix);
            let stage = stage_words(
                site.say(),
                site.resolved.stages.of(skill.goal.movement).unwrap_or(0),
            );
            format!("{}: {stage}. {school}", site.named(Owner::Skill(ix)))
        }
        None => school.clone(),
    }
}

/// How many movements stand at a stage, and how many of them are essential.
type Rungs = BTreeMap<u32, (u32, u32)>;

/// The card of a skill, or of the school.
pub fn draw(site: &Material<'_>, of: Option<SkillIx>) -> Vec<u8> {
    let c = site.curriculum;
    let mut rungs = Rungs::new();
    let mut add = |stage: u32, essential: bool| {
        let rung = rungs.entry(stage).or_default();
        rung.0 += 1;
        rung.1 += u32::from(essential);
    };
    let (name, small, mark) = match of {
        Some(ix) => {
            let chain = &site.chains.of_skills[ix.at()];
            chain
                .movements
                .iter()
                .for_each(|l| add(l.stage, l.essential));
            let goal = c.skill(ix).goal.movement;
            let stage = stage_words(site.say(), site.resolved.stages.of(goal).unwrap_or(0));
            (c.skill(ix).name.as_str(), stage, site.links.mark(goal))
        }
        None => {
            c.published()
                .filter_map(|(ix, _)| site.resolved.stages.of(ix))
                .for_each(|stage| add(stage, true));
            (c.school().name.as_str(), String::new(), None)
        }
    };
    let school = of.map_or("", |_| c.school().name.as_str());
    let signal = mark.map_or(String::new(), |m| m.word.to_uppercase());
    let sign = mark.map_or("", |m| site.say().say(&format!("map.sign_{}", m.signal)));
    let accent = accent(c.school().accent.as_deref());
    let draw = || {
        let mut pen = Pen::new(WIDTH, HEIGHT)?;
        plumb(&mut pen, &rungs, of.is_some());
        words(&mut pen, school, name, &small, [&signal, sign]);
        pen.png(SLATE, [CHALK, FAINT, accent])
    };
    draw().unwrap_or_default()
}

/// The plumb line, and a rung for each stage that has movements: the wider, the more movements; chalk for the part that
/// nobody can leave out, the goal's in the accent.
fn plumb(pen: &mut Pen, rungs: &Rungs, has_goal: bool) {
    let last = rungs.keys().next_back().copied().unwrap_or(0);
    let most = rungs.values().map(|r| r.0).max().unwrap_or(1).max(1);
    let (low, high) = (BOTTOM - 66.0, TOP + 44.0);
    let step = (low - high) / last.max(1) as f32;
    let thick = (step * 0.3).clamp(2.0, 9.0).round();
    let mut strokes = [PathBuilder::new(), PathBuilder::new(), PathBuilder::new()];
    bar(&mut strokes[CHALKED], LINE, TOP, 6.0, BOTTOM - TOP);
    for (stage, (count, essential)) in rungs {
        let top = (low - step * *stage as f32 - thick / 2.0).round();
        let half = |n: u32| (34.0 + 106.0 * (n as f32 / most as f32)).round();
        let mut level = |ink: usize, half: f32| {
            bar(&mut strokes[ink], LINE, top, half * 2.0, thick);
        };
        if has_goal && *stage == last {
            level(ACCENTED, half(most));
        } else if *essential > 0 && essential == count {
            level(CHALKED, half(*count));
        } else {
            // Faint on both sides of the essential part.
            let inner = if *essential > 0 {
                half(*essential)
            } else {
                3.0
            };
            let outer = half(*count).max(inner + 4.0);
            if *essential > 0 {
                level(CHALKED, inner);
            }
            for side in [-1.0, 1.0] {
                let middle = LINE + side * (inner + outer) / 2.0;
                bar(&mut strokes[FAINTLY], middle, top, outer - inner, thick);
            }
        }
    }
    strokes[ACCENTED].push_circle(LINE, BOTTOM, 17.0);
    fill(pen, strokes);
}

/// A level or upright bar, by its middle.
fn bar(path: &mut PathBuilder, middle: f32, top: f32, wide: f32, high: f32) {
    if let Some(rect) = Rect::from_xywh(middle - wide / 2.0, top, wide, high) {
        path.push_rect(rect);
    }
}

fn fill(pen: &mut Pen, strokes: [PathBuilder; 3]) {
    for (ink, stroke) in strokes.into_iter().enumerate() {
        let path: Option<Path> = stroke.finish();
        if let Some(path) = path {
            pen.fill(ink, &path);
        }
    }
}

/// The words, each only where its letters can be drawn.
fn words(pen: &mut Pen, school: &str, name: &str, small: &str, [signal, sign]: [&str; 2]) {
    let Some(letters) = Letters::new() else {
        return;
    };
    let mut chalk = PathBuilder::new();
    let mut faint = PathBuilder::new();
    if letters.can_write(school) && !school.is_empty() {
        let (size, lines) = letters.fit(school, MEASURE, 1, 34.0, 24.0);
        letters.write(&mut faint, &lines.concat(), size, (LEFT, 108.0));
    }
    if letters.can_write(name) {
        let (size, lines) = letters.fit(name, MEASURE, 3, 84.0, 48.0);
        let mut foot = 340.0 - (lines.len() as f32 - 1.0) * size * 0.58 + size * 0.2;
        for line in &lines {
            letters.write(&mut chalk, line, size, (LEFT, foot));
            foot += size * 1.16;
        }
    }
    let mut left = LEFT;
    // A mark is never left out for want of letters: its sign stands for its word.
    let signal = if letters.can_write(signal) {
        signal
    } else {
        sign
    };
    if !signal.is_empty() {
        let wide = letters.width(signal, 30.0) + 36.0;
        frame(&mut chalk, (left, 516.0), (wide, 52.0), 3.0);
        letters.write(&mut chalk, signal, 30.0, (left + 18.0, 553.0));
        left += wide + 28.0;
    }
    if letters.can_write(small) {
        letters.write(&mut faint, small, 32.0, (left, 553.0));
    }
    fill(pen, [chalk, faint, PathBuilder::new()]);
}

/// An empty box: its inside runs the other way round, so that it stays unfilled.
fn frame(path: &mut PathBuilder, at: (f32, f32), size: (f32, f32), thick: f32) {
    let (left, top, right, bottom) = (at.0, at.1, at.0 + size.0, at.1 + size.1);
    path.move_to(left, top);
    path.line_to(right, top);
    path.line_to(right, bottom);
    path.line_to(left, bottom);
    path.close();
    path.move_to(left + thick, top + thick);
    path.line_to(left + thick, bottom - thick);
    path.line_to(right - thick, bottom - thick);
    path.line_to(right - thick, top + thick);
    path.close();
}

/// The site's mark as an icon: a plumb line and three rungs, in the same places as in the theme's drawing.
pub fn icon(site: &Material<'_>, size: u32, maskable: bool) -> Vec<u8> {
    // The middle four fifths of a maskable icon are always seen.
    let scale = size as f32 / if maskable { 92.0 } else { 64.0 };
    let inset = if maskable { 14.0 } else { 0.0 };
    let at = |v: f32| (v + inset) * scale;
    let mut strokes = [PathBuilder::new(), PathBuilder::new(), PathBuilder::new()];
    let wide = 5.0 * scale;
    bar(&mut strokes[CHALKED], at(32.0), at(5.0), wide, 45.0 * scale);
    for y in [16.0, 29.0, 42.0] {
        let top = at(y) - wide / 2.0;
        bar(&mut strokes[CHALKED], at(32.0), top, 38.0 * scale, wide);
    }
    strokes[ACCENTED].push_circle(at(32.0), at(54.0), 6.0 * scale);
    let accent = accent(site.curriculum.school().accent.as_deref());
    let draw = || {
        let mut pen = Pen::new(size, size)?;
        fill(&mut pen, strokes);
        pen.png(SLATE, [CHALK, FAINT, accent])
    };
    draw().unwrap_or_default()
}

/// The school's accent, nearer to chalk where it would not stand out from slate by 3 to 1 (WCAG 2.2, 1.4.11).
fn accent(of_school: Option<&str>) -> Colour {
    let hex = |i: usize| {
        of_school.and_then(|a| u8::from_str_radix(a.get(1 + 2 * i..3 + 2 * i)?, 16).ok())
    };
    let [red, green, blue] = [hex(0), hex(1), hex(2)];
    let own = match (red, green, blue) {
        (Some(red), Some(green), Some(blue)) => [red, green, blue],
        _ => ACCENT,
    };
    (0..=10)
        .map(|part| [0, 1, 2].map(|i| mixed(own[i], CHALK[i], part, 10)))
        .find(|colour| luminance(*colour) + 0.05 >= 3.0 * (luminance(SLATE) + 0.05))
        .unwrap_or(CHALK)
}

/// Relative luminance (WCAG 2.2).
fn luminance(colour: Colour) -> f64 {
    let [red, green, blue] = colour.map(|part| {
        let part = f64::from(part) / 255.0;
        if part <= 0.04045 {
            part / 12.92
        } else {
            libm::pow((part + 0.055) / 1.055, 2.4)
        }
    });
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_dark_accent_is_drawn_lighter() {
        assert_eq!(accent(Some("#f0a040")), [0xf0, 0xa0, 0x40]);
        for dark in ["#000000", "#20262b", "#102040"] {
            let drawn = luminance(accent(Some(dark))) + 0.05;
            assert!(drawn >= 3.0 * (luminance(SLATE) + 0.05), "{dark}");
        }
        assert_eq!(accent(None), accent(Some("#b4472b")));
    }
}
