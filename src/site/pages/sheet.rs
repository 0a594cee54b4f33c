//! The self-test: the full sheet of all tests, and for each skill its own, guided, in full and on paper.

use super::{Made, head, turn};
use crate::curriculum::caution::ClassIx;
use crate::curriculum::{MovementIx, Owner, SkillIx};
use crate::site::material::{Material, ROWS_A_PAGE};
use crate::site::pages::view::{self, CautionView, Named};
use crate::site::theme::ThemeError;
use serde::Serialize;
use std::borrow::Cow;
use std::cmp::Reverse;
use std::collections::BTreeSet;
use tera::Context;

/// At most so many tests stand on a skill's sheet; a larger chain is shown from the ground up to there, and says so.
const MOST_TESTS: usize = 300;

#[derive(Serialize)]
pub(super) struct Group<'a> {
    name: &'a str,
    count: usize,
    /// Its tests, as HTML.
    tests: String,
}

/// Every published movement as their tests are done.
fn in_test_order<'a>(site: &Material<'a>) -> &'a [MovementIx] {
    site.kept.test_order.get_or_init(|| all(site))
}

fn all(site: &Material<'_>) -> Vec<MovementIx> {
    let mut all: Vec<MovementIx> = site.curriculum.published().map(|(ix, _)| ix).collect();
    sort(site, &mut all);
    all
}

/// Sorts movements as their tests are done: by group, stage, id.
pub(super) fn sort(site: &Material<'_>, movements: &mut [MovementIx]) {
    movements.sort_by_cached_key(|ix| {
        (
            view::sheet_group(site.curriculum.movement(*ix)),
            site.resolved.stages.of(*ix),
            *ix,
        )
    });
}

/// Tests by group, each made by `make`.
fn groups<'p, 'm>(
    site: &'p Material<'_>,
    movements: &[MovementIx],
    make: impl Fn(MovementIx) -> Result<Cow<'m, str>, ThemeError>,
) -> Result<Vec<Group<'p>>, ThemeError> {
    let mut groups: Vec<Group<'p>> = Vec::new();
    for ix in movements {
        let (_, key) = view::sheet_group(site.curriculum.movement(*ix));
        let name = site.say().say(key);
        if groups.last().is_none_or(|group| group.name != name) {
            groups.push(Group {
                name,
                count: 0,
                tests: String::new(),
            });
        }
        if let Some(group) = groups.last_mut() {
            group.count += 1;
            group.tests.push_str(&make(*ix)?);
            group.tests.push('\n');
        }
    }
    Ok(groups)
}

/// The tests for the screen, with what a number opens within a skill.
fn on_screen<'p>(
    site: &'p Material<'_>,
    movements: &[MovementIx],
    within: Option<SkillIx>,
) -> Result<Vec<Group<'p>>, ThemeError> {
    groups(site, movements, |ix| match within {
        Some(_) => site.test(ix, within),
        None => site.test_alone(ix),
    })
}

/// The tests for paper.
pub(super) fn on_paper<'p>(
    site: &'p Material<'_>,
    movements: &[MovementIx],
    within: Option<SkillIx>,
) -> Result<Vec<Group<'p>>, ThemeError> {
    groups(site, movements, |ix| site.test_on_paper(ix, within))
}

/// A part of the sheet of all published movements.
pub fn self_test(site: &Material<'_>, index: usize) -> Result<Made, ThemeError> {
    let all = in_test_order(site);
    let rows = all.chunks(ROWS_A_PAGE).nth(index).unwrap_or(&[]);
    // The one with the fewest rungs under it first.
    let mut goals: Vec<_> = site.curriculum.skills().collect();
    goals.sort_by_key(|(_, s)| site.resolved.stages.of(s.goal.movement));
    let skills: Vec<Named> = goals
        .iter()
        .map(|(ix, s)| Named::skill_at(site, *ix, &format!("self-test-{}.html", s.id)))
        .collect::<Result<_, _>>()?;
    let mut context = Context::new();
    context.insert("groups", &on_screen(site, rows, None)?);
    context.insert("skills", &skills);
    let figures = goals
        .iter()
        .map(|(_, s)| view::figure_of(site, s.goal.movement));
    context.insert("figures", &figures.collect::<Vec<_>>());
    context.insert(
        "turn",
        &turn("self-test", index, all.len().div_ceil(ROWS_A_PAGE).max(1)),
    );
    context.insert("note", "");
    Ok((
        "self-test.html".into(),
        head(
            "self-test",
            site.say().say("page.self_test.title"),
            site.say().say("page.self_test.description"),
        ),
        context,
    ))
}

/// The caution classes of these movements, the gravest first: when to stop is said on what is printed.
pub(super) fn stops<'a>(site: &Material<'a>, movements: &[MovementIx]) -> Vec<CautionView<'a>> {
    let of = |ix: &MovementIx| site.curriculum.movement(*ix).cautions().iter().copied();
    let classes: BTreeSet<ClassIx> = movements.iter().flat_map(of).collect();
    let mut classes: Vec<ClassIx> = classes.into_iter().collect();
    classes.sort_by_key(|ix| Reverse(site.curriculum.cautions().class(*ix).signal));
    let view = |ix: ClassIx| view::caution(site, ix, &[]);
    classes.into_iter().map(view).collect()
}

/// The self-test of a skill.
pub fn skill_test(site: &Material<'_>, ix: SkillIx) -> Result<Made, ThemeError> {
    let skill = site.curriculum.skill(ix);
    let chain = &site.chains.of_skills[ix.at()];
    let mut movements: Vec<MovementIx> = chain
        .movements
        .iter()
        .take(MOST_TESTS)
        .map(|l| l.movement)
        .collect();
    let left_out = chain.movements.len() - movements.len();
    sort(site, &mut movements);
    let mut context = Context::new();
    context.insert("groups", &on_screen(site, &movements, Some(ix))?);
    context.insert("stops", &stops(site, &movements));
    context.insert("skill", skill.id.as_str());
    context.insert("name", &skill.name);
    context.insert("link", site.links.skill(ix));
    context.insert("goal", site.links.of(skill.goal.movement));
    context.insert("goal_mark", &site.links.mark(skill.goal.movement));
    context.insert("goal_target", &site.words(&skill.goal.target));
    context.insert("count", &movements.len());
    context.insert("left_out", &left_out);
    let name = site.named(Owner::Skill(ix));
    let name = [("skill", (&name).into())];
    Ok((
        "self-test-skill.html".into(),
        head(
            "self-test",
            &site.say().fill("page.skill_test_title", &name),
            site.say().fill("page.skill_test_description", &name),
        ),
        context,
    ))
}
