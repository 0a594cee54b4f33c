//! The cautions audit over every surface: a theme or a note that drops the mark makes publish fail and leaves the old site as
//! it was. The program is run as a coach would run it.

#[path = "scale/generate.rs"]
mod generate;
#[path = "inject/payloads.rs"]
mod payloads;
#[path = "hostile/pieces.rs"]
#[allow(dead_code, reason = "what damage is made of is used elsewhere")]
mod pieces;
#[path = "hostile/records.rs"]
#[allow(dead_code, reason = "results are used elsewhere")]
mod records;

use rungbook::source::{Content, Snapshot, SourceFile};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// A curriculum with an inverted, a loaded and a plain movement, a family, an old id and a note with a link.
fn curriculum() -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a temporary folder");
    let put = |path: &str, text: &str| {
        let path = dir.path().join(path);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder is made");
        fs::write(path, text).expect("a file is written");
    };
    put(
        "content/school.yaml",
        "school: Test Room\naddress: https://test.example/c/\nlanguage: en\nunits: metric\nequipment:\n  plates: Plates\n",
    );
    let movement = |id: &str, name: &str, position: &str, rest: &str| {
        format!(
            "movement: {id}\nname: {name}\npattern: balance\nposition: {position}\nload: body\nequipment: [plates]\nsummary: Do it.\nstandard: 8 reps\ntest: {{ how: Try }}\ncues: [quiet]\nfaults: [{{ see: noise }}]\n{rest}"
        )
    };
    put(
        "content/movements/floor-rest.yaml",
        &movement("floor-rest", "Floor rest", "prone", ""),
    );
    put(
        "content/movements/way-out.yaml",
        &movement("way-out", "Way out", "prone", "").replace("pattern: balance", "pattern: exit"),
    );
    put(
        "content/movements/upside.yaml",
        &movement(
            "upside",
            "Upside stand",
            "inverted",
            "exit: Step down.\nwas: [old-upside]\nneeds: [floor-rest, way-out]\n",
        ),
    );
    put(
        "content/movements/heavy.yaml",
        &movement(
            "heavy",
            "Heavy lift",
            "upright",
            "needs: [{ any of: [upside, floor-rest] }]\n",
        )
        .replace("8 reps", "8 reps with 5 kg"),
    );
    put(
        "content/movements/turns.yaml",
        "family: turns\nname: Slow turns\npattern: balance\nposition: inverted\nload: body\nequipment: []\nsummary: Turn.\nexit: Step down.\ntest: { how: Try }\ncues: [quiet]\nfaults: [{ see: noise }]\nstandard: 8 reps\nneeds: [way-out]\naxes: { range: [half, whole] }\nmovements:\n  half-turn: { at: { range: half }, name: Half turn, leverage: { posture: handstand } }\n  whole-turn: { at: { range: whole }, name: Whole turn, leverage: { posture: wall-handstand } }\n",
    );
    put(
        "content/skills/stand.yaml",
        "skill: stand\nname: To stand\ngoal: heavy\n",
    );
    put(
        "content/notes/floor-rest.md",
        "Then [go up](movement:upside), later [](movement:heavy), for [a skill](skill:stand) or [turns](family:turns).\n",
    );
    dir
}

fn publish(dir: &Path) -> Output {
    Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["publish", "--from"])
        .arg(dir)
        .output()
        .expect("the program runs")
}

/// Every file of a folder with its bytes.
fn tree(dir: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let mut out: Vec<(PathBuf, Vec<u8>)> = walkdir::WalkDir::new(dir)
        .into_iter()
        .map(|e| e.expect("an entry"))
        .filter(|e| e.file_type().is_file())
        .map(|e| (e.path().to_path_buf(), fs::read(e.path()).expect("a file")))
        .collect();
    out.sort();
    out
}

fn shipped(name: &str) -> String {
    fs::read_to_string(
        Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("themes/chalk")
            .join(name),
    )
    .expect("a template")
}

/// Publishes soundly, lays a changed file over the theme, publishes again: refused, and the site untouched.
fn refuses(file: &str, change: impl Fn(&str) -> String, says: &str) {
    let dir = curriculum();
    let first = publish(dir.path());
    assert!(
        first.status.success(),
        "{}",
        String::from_utf8_lossy(&first.stderr)
    );
    let before = tree(&dir.path().join("site"));
    assert!(before.len() > 20);
    let text = shipped(file);
    let changed = change(&text);
    assert_ne!(text, changed, "the change of {file} does not change it");
    fs::create_dir_all(dir.path().join("themes/chalk")).expect("a folder");
    fs::write(dir.path().join("themes/chalk").join(file), changed).expect("a template");
    // Told by pieces too, no page at fault is sound; nor is one that is made as one text, as pages of an own theme are.
    let (pages, told, found) = told_and_found(&built(&files(dir.path()), true));
    if file.ends_with(".html") {
        assert!(
            told <= found && found < pages,
            "{file}: {told} {found} {pages}"
        );
    }
    let second = publish(dir.path());
    let error = String::from_utf8_lossy(&second.stderr).into_owned();
    assert_eq!(second.status.code(), Some(1), "{file}: {error}");
    assert!(error.contains(says), "{file}: `{says}` is not in\n{error}");
    assert_eq!(
        before,
        tree(&dir.path().join("site")),
        "the old site is as it was"
    );
    let left: Vec<String> = fs::read_dir(dir.path())
        .expect("the folder")
        .map(|e| {
            e.expect("an entry")
                .file_name()
                .to_string_lossy()
                .into_owned()
        })
        .filter(|n| n.starts_with('.'))
        .collect();
    assert!(left.is_empty(), "left behind: {left:?}");
}

/// The one part that names a movement, without its mark: links, rows, ladders, notes, redirects all use it.
fn without_mark(text: &str) -> String {
    let start = text.find("{% if signal %}").expect("the mark is there");
    let end = text[start..].find("{% endif %}").expect("its end") + start + "{% endif %}".len();
    format!("{}{}", &text[..start], &text[end..])
}

#[test]
fn a_name_without_its_mark() {
    refuses("parts.html", without_mark, "without its caution mark");
}

#[test]
fn a_name_whose_mark_is_hidden() {
    refuses(
        "parts.html",
        |t| t.replace("class=\"mark mark-{{ signal }}\"", "hidden class=\"mark\""),
        "without its caution mark",
    );
}

#[test]
fn a_row_that_drops_the_link_with_its_mark() {
    refuses(
        "skill.html",
        |t| {
            t.replace(
                "{{<ui.figure src={r.figure}/>}}{{ r.link | safe }}",
                "{{<ui.figure src={r.figure}/>}}{{ r.id }}",
            )
        },
        "is named in a <tr> without its caution mark",
    );
}

#[test]
fn a_row_by_plain_link() {
    refuses(
        "skill.html",
        |t| {
            t.replace("<tr data-movement=\"{{ r.id }}\"", "<tr")
                .replace(
                    "{{ r.link | safe }}",
                    "<a href=\"{{ r.id }}.html\">{{ r.id }}</a>",
                )
        },
        "a link leads to `heavy`",
    );
}

#[test]
fn a_ladder_by_plain_link() {
    let plain = |t: &str| {
        t.replace(
            "{% for link in step.opens %}{{ link | safe }}",
            "<a href=\"upside.html\">up</a> {% for link in step.opens %}{{ link | safe }}",
        )
    };
    refuses("parts.html", plain, "a link leads to `upside`");
}

#[test]
fn a_checklist_item() {
    let plain = |t: &str| {
        t.replace(
            "<span class=\"led\">{{ r.link | safe }} {{<ui.state",
            "<span class=\"led\">{{ r.id }} {{<ui.state",
        )
    };
    refuses(
        "parts.html",
        plain,
        "`upside` is named in a <article> without its caution mark",
    );
}

#[test]
fn a_row_of_the_sheet_for_paper() {
    let plain = |t: &str| {
        t.replace(
            "{{ r.link | safe }}{% if r.only_after %} <span class=\"after\"",
            "{{ r.id }}{% if r.only_after %} <span class=\"after\"",
        )
    };
    refuses(
        "parts.html",
        plain,
        "`upside` is named in a <tr> without its caution mark",
    );
}

#[test]
fn a_movement_page_without_its_cautions() {
    let plain = |t: &str| {
        let start = t.find("{% if cautions %}").expect("the cautions");
        let else_if = "{% elif m.way_out %}";
        let end = t.find(else_if).expect("their end") + else_if.len();
        let head = t.find("{% if mark %}").expect("the mark");
        let head_end = t[head..].find("{% endif %}").expect("its end") + head + "{% endif %}".len();
        let (between, after) = (&t[head_end..start], &t[end..]);
        format!("{}{between}{{% if m.way_out %}}{after}", &t[..head])
    };
    refuses(
        "movement.html",
        plain,
        "`upside` is named in a <main> without its caution mark",
    );
}

#[test]
fn a_redirect() {
    refuses(
        "redirect.html",
        |t| {
            t.replace(
                "{{ say(key=\"moved.lead\", old=old, new=link | safe) }}",
                "<a href=\"{{ to }}\">here</a>",
            )
        },
        "old-upside.html: a link leads to `upside`",
    );
}

#[test]
fn an_index_by_name_alone() {
    refuses(
        "home.html",
        |t| {
            t.replace(
                "<h2>{{ w.home.where_do_i_start }}</h2>",
                "<h2>{{ w.home.where_do_i_start }}</h2><p>Upside stand</p>",
            )
        },
        "is named as \"Upside stand\"",
    );
}

#[test]
fn a_style_sheet_that_hides_marks() {
    refuses(
        "parts.css",
        |t| format!("{t}\n.mark {{ display: none; }}\n"),
        "hides caution marks",
    );
}

#[test]
fn a_page_without_its_policy_and_with_outside_code() {
    refuses(
        "base.html",
        |t| t.replace("http-equiv=\"Content-Security-Policy\"", "name=\"policy\""),
        "content security policy",
    );
    refuses(
        "base.html",
        |t| {
            t.replace(
                "</head>",
                "<script src=\"https://cdn.example/x.js\"></script></head>",
            )
        },
        "loads something from outside",
    );
}

/// No theme loads anything before the guard's sheet and script, and none replaces them.
#[test]
fn a_page_that_loads_something_before_the_guard() {
    for (before, after) in [
        (
            "<meta charset=\"utf-8\">",
            "<meta charset=\"utf-8\"><link rel=\"stylesheet\" href=\"theme/parts.css\">",
        ),
        (
            "<meta charset=\"utf-8\">",
            "<meta charset=\"utf-8\"><script src=\"theme/page.js\"></script>",
        ),
    ] {
        refuses(
            "base.html",
            |t| t.replacen(before, after, 1),
            "is loaded before the guard's sheet",
        );
    }
    let dir = curriculum();
    let theme = dir.path().join("themes/chalk");
    fs::create_dir_all(&theme).expect("a folder");
    fs::write(theme.join("guard.css"), "[data-caution] { display: none }").expect("a sheet");
    let out = publish(dir.path());
    let said = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(
        out.status.success() || said.contains("hides caution marks"),
        "{said}"
    );
    let sheet = fs::read_to_string(dir.path().join("site/guard.css")).unwrap_or_default();
    assert!(
        sheet.is_empty() || sheet.contains("@layer guard"),
        "{sheet}"
    );
}

/// What leaves with a reader, and what a script may make of texts, is said on every page.
#[test]
fn every_page_says_its_referrer_and_its_trusted_types() {
    let dir = curriculum();
    let out = publish(dir.path());
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let pages = tree(&dir.path().join("site"));
    let mut count = 0;
    for (path, bytes) in pages
        .iter()
        .filter(|(p, _)| p.extension().is_some_and(|e| e == "html"))
    {
        let html = String::from_utf8_lossy(bytes);
        for tag in [
            "<meta name=\"referrer\" content=\"no-referrer\">",
            "require-trusted-types-for 'script'; trusted-types rungbook-worker\"",
            "guard.css?v=",
        ] {
            assert!(html.contains(tag), "{}: {tag}", path.display());
        }
        count += 1;
    }
    assert!(count > 20);
}

/// The audit of one page, with what every page has before it.
fn judge(body: &str) -> Vec<String> {
    use rungbook::proof::proofread;
    use rungbook::site::Theme;
    use rungbook::site::audit::{Auditor, POLICY};
    let dir = curriculum();
    let snapshot = rungbook::io::snapshot(dir.path()).expect("a folder");
    let proof = proofread(&snapshot);
    let words = proof.curriculum.words();
    let theme = Theme::load("chalk", &snapshot, words).expect("the theme");
    let policy = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">");
    let page = match body.contains("POLICY") {
        true => body.replace("POLICY", &policy),
        false => format!("{policy}{body}"),
    };
    let page = theme.guarded(&page);
    let faults = Auditor::new(&proof.curriculum).file("a.html", page.as_bytes());
    faults.into_iter().map(|f| f.says).collect()
}

const MARK: &str = "<a data-caution=\"warning\" href=\"cautions.html\">Warning</a>";

#[test]
fn a_mark_counts_only_where_a_browser_shows_it() {
    let named = |mark: &str| format!("<p data-movement=\"upside\">Upside stand {mark}</p>");
    assert_eq!(judge(&named(MARK)), Vec::<String>::new());
    assert_eq!(
        judge(&format!("<details>{}</details>", named(MARK))),
        Vec::<String>::new()
    );
    for (open, close) in [
        ("<template>", "</template>"),
        ("<noscript>", "</noscript>"),
        ("<dialog>", "</dialog>"),
        ("<details><summary>More</summary>", "</details>"),
        ("<i hidden>", "</i>"),
        ("<i aria-hidden=\"true\">", "</i>"),
        ("<i popover>", "</i>"),
        ("<video>", "</video>"),
        ("<object>", "</object>"),
        ("<select>", "</select>"),
        ("<svg><defs>", "</defs></svg>"),
        ("<iframe>", "</iframe>"),
    ] {
        let faults = judge(&named(&format!("{open}{MARK}{close}")));
        assert!(!faults.is_empty(), "{open}");
    }
    for mark in [
        "<input data-caution=\"warning\">",
        "<wbr data-caution=\"warning\">",
        "<i data-caution=\"danger\">Warning</i>",
        "<i data-caution=\"warning\"></i>",
        "<i data-caution=\"warning\">\u{200b}\u{2800}\u{3164}</i>",
        "<i data-caution=\"warning\">safe</i>",
        "<i data-caution=\"warning\" aria-hidden=\"true\">Warning</i>",
    ] {
        assert!(!judge(&named(mark)).is_empty(), "{mark}");
    }
}

#[test]
fn nothing_is_loaded_from_outside_however_it_is_written() {
    assert_eq!(
        judge(
            "<img src=\"pictures/a.png\" srcset=\"a.png 1x, b.png 2x\"><video poster=\"p.jpg\"></video>"
        ),
        Vec::<String>::new()
    );
    for tag in [
        "<video poster=\"https://x.example/a.png\"></video>",
        "<video poster=\"//x.example/a.png\"></video>",
        "<img src=\"ht\ttps://x.example/a.png\">",
        "<img src=\"/\t/x.example/a.png\">",
        "<img src=\"\\\\x.example/a.png\">",
        "<img srcset=\"a.png 1x, https://x.example/a.png 2x\">",
        "<img src=\"HTTPS:x.example/a.png\">",
        "<object data=\"https://x.example/a\"></object>",
        "<link rel=\"icon\" href=\"https://test.example.evil.example/c/\">",
        "<img src=\"https://test.example@evil.example/c/\">",
        "<img src=\"data:image/png;base64,x\">",
    ] {
        let faults = judge(tag);
        assert!(
            faults.iter().any(|f| f.contains("from outside")),
            "{tag}: {faults:?}"
        );
    }
}

#[test]
fn a_policy_that_no_browser_reads_and_pages_that_lead_away() {
    let says = |body: &str, what: &str| {
        let faults = judge(body);
        assert!(
            faults.iter().any(|f| f.contains(what)),
            "{body}: {faults:?}"
        );
    };
    says("<template>POLICY</template>", "security policy");
    says("<noscript>POLICY</noscript>", "security policy");
    for to in ["0; url=https://x.example/", "3; url=upside.html", "0;URL=x"] {
        says(
            &format!("<meta http-equiv=\"Refresh\" content=\"{to}\">"),
            "leads elsewhere by itself",
        );
    }
}

/// The thirteen ways round by a link, and more.
#[test]
fn a_link_is_read_as_a_browser_follows_it() {
    for href in ways_round("links") {
        let faults = judge(&format!("<p><a href=\"{href}\">go</a></p>"));
        assert!(
            faults
                .iter()
                .any(|f| f.contains("a link leads to `upside`")),
            "{href}: {faults:?}"
        );
    }
    for href in [
        "floor-rest.html",
        "https://other.example/c/upside.html",
        "mailto:a@test.example",
        "#upside",
        "index.html?upside.html",
    ] {
        assert_eq!(
            judge(&format!("<p><a href=\"{href}\">go</a></p>")),
            Vec::<String>::new(),
            "{href}"
        );
    }
}

/// Links to `upside` and ways to write its name, which the browser's own tests read too.
fn ways_round(what: &str) -> Vec<String> {
    let all: serde_json::Value =
        serde_json::from_str(include_str!("browser/guard/ways_round.json")).expect("JSON");
    let of = all[what].as_array().expect("a list");
    of.iter()
        .map(|way| way.as_str().expect("a text").to_string())
        .collect()
}

/// Names in the letters of others, with letters that nobody sees, with other spaces.
#[test]
fn a_name_is_read_as_a_reader_sees_it() {
    for name in ways_round("names") {
        let faults = judge(&format!("<p>{name}</p>"));
        assert!(
            faults.iter().any(|f| f.contains("`upside` is named as")),
            "{name:?}: {faults:?}"
        );
    }
    assert_eq!(
        judge("<p>Upside stands</p><p>Floor\u{a0}rest</p>"),
        Vec::<String>::new()
    );
}

/// A script of one's own is listed, in one line.
#[test]
fn own_scripts_are_listed() {
    let dir = curriculum();
    let theme = dir.path().join("themes/chalk");
    fs::create_dir_all(&theme).expect("a folder");
    fs::write(theme.join("page.js"), shipped("page.js")).expect("a copy");
    let out = publish(dir.path());
    assert!(
        !String::from_utf8_lossy(&out.stderr).contains("page.js"),
        "a copy is none"
    );
    fs::write(theme.join("extra.js"), "document.title;").expect("a script");
    let out = publish(dir.path());
    let said = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(out.status.success(), "{said}");
    let lines: Vec<&str> = said.lines().filter(|l| l.contains("extra.js")).collect();
    assert!(lines.len() == 1 && !lines[0].contains("page.js"), "{said}");
}

#[test]
fn a_note_that_goes_round_the_mark() {
    let dir = curriculum();
    let note = dir.path().join("content/notes/floor-rest.md");
    for round in ["[up](upside.html)", "[up](./upside.html#x)"] {
        fs::write(&note, round).expect("a note");
        let out = publish(dir.path());
        assert_eq!(out.status.code(), Some(1), "{round}");
        assert!(
            String::from_utf8_lossy(&out.stderr).contains("link-scheme"),
            "{round}"
        );
    }
    // An absolute link to the school's own address passes proof; the audit still finds it.
    fs::write(&note, "[up](https://test.example/c/upside.html)").expect("a note");
    let out = publish(dir.path());
    assert_eq!(out.status.code(), Some(1));
    assert!(
        String::from_utf8_lossy(&out.stderr).contains("a link leads to `upside`"),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
}

#[test]
fn data_without_cautions() {
    use rungbook::proof::proofread;
    use rungbook::site::audit::Auditor;
    let dir = curriculum();
    let snapshot = rungbook::io::snapshot(dir.path()).expect("a snapshot");
    let proof = proofread(&snapshot);
    let auditor = Auditor::new(&proof.curriculum);
    let bare =
        br#"{"movements":[{"id":"upside","cautions":[]},{"id":"floor-rest","cautions":[]}]}"#;
    let faults = auditor.file("data/curriculum.json", bare);
    assert_eq!(faults.len(), 1);
    assert!(
        faults[0]
            .says
            .contains("`upside` stands in the data without its cautions")
    );
    let whole = br#"{"movements":[{"id":"upside","signal":"warning","cautions":["inverted"]}]}"#;
    assert!(auditor.file("data/curriculum.json", whole).is_empty());
}

#[test]
fn the_tables_of_the_page() {
    use rungbook::proof::proofread;
    use rungbook::site::audit::Auditor;
    let dir = curriculum();
    let snapshot = rungbook::io::snapshot(dir.path()).expect("a folder");
    let proof = proofread(&snapshot);
    let auditor = Auditor::new(&proof.curriculum);
    let tables = |mark: i32| {
        format!(
            "globalThis.rungbookTables = {{\"ids\":[\"upside\"],\"marks\":[{{\"signal\":\"warning\"}}],\"mark\":[{mark}]}};\n"
        )
    };
    assert!(
        auditor
            .file("data/tables.js", tables(0).as_bytes())
            .is_empty()
    );
    let faults = auditor.file("data/tables.js", tables(-1).as_bytes());
    assert_eq!(faults.len(), 1);
    assert!(
        faults[0]
            .says
            .contains("`upside` stands in the tables without its caution mark")
    );
}

#[test]
fn a_template_that_cannot_be_read_names_its_line() {
    let dir = curriculum();
    fs::create_dir_all(dir.path().join("themes/chalk")).expect("a folder");
    fs::write(
        dir.path().join("themes/chalk/movement.html"),
        "{% extends \"base.html\" %}\n{% block main %}{{ nope.nope }}{% endblock %}\n",
    )
    .expect("a template");
    let out = publish(dir.path());
    let error = String::from_utf8_lossy(&out.stderr).into_owned();
    assert_eq!(out.status.code(), Some(1), "{error}");
    assert!(error.contains("movement.html:2"), "{error}");
    assert!(!dir.path().join("site").exists());
}

/// A skill is as guarded as its goal, a family as its members.
#[test]
fn a_skill_and_a_family_by_plain_link() {
    let plain = |t: &str| {
        t.replace(
            "<h3>{{ s.link | safe }}</h3>",
            "<h3><a href=\"{{ s.id }}.html\">{{ s.id }}</a></h3>",
        )
    };
    refuses(
        "home.html",
        plain,
        "`stand` is named in a <article> without its caution mark",
    );
    let bare = |t: &str| plain(t).replace(" data-skill=\"{{ s.id }}\"", "");
    refuses(
        "home.html",
        bare,
        "a link leads to `stand` outside an element with data-skill=\"stand\"",
    );
    refuses(
        "home.html",
        |t| t.replace("{{ f | safe }}", "<a href=\"turns.html\">turns</a>"),
        "a link leads to `turns` outside an element with data-family=\"turns\"",
    );
    refuses(
        "home.html",
        |t| {
            let kind = "<span data-movement=\"turns\"><a href=\"turns.html\">t</a><a data-caution=\"warning\" href=\"cautions.html\">w</a></span>";
            t.replace("{{ f | safe }}", kind)
        },
        "a link leads to `turns` outside an element with data-family=\"turns\"",
    );
    refuses(
        "skill.html",
        |t| {
            let start = t.find("{% if goal_mark %}").expect("the mark");
            let end = t[start..].find("{% endif %}").expect("its end") + start;
            format!("{}{}", &t[..start], &t[end + "{% endif %}".len()..])
        },
        "stand.html: `stand` is named in a <h1> without its caution mark",
    );
}

#[test]
fn titles_without_the_signal_word() {
    refuses(
        "base.html",
        |t| t.replace("<title>{{ page.title }}", "<title>{{ school.name }}"),
        "`upside` is named in the title of its page without its signal word",
    );
    refuses(
        "base.html",
        |t| {
            t.replace(
                "\"og:title\" content=\"{{ page.title }}",
                "\"og:title\" content=\"{{ page.kind }}",
            )
        },
        "`stand` is named in the title of a link of its page without its signal word",
    );
    refuses(
        "base.html",
        |t| {
            t.replace(
                "{{ page.json_ld | safe }}",
                "{{ page.json_ld | safe | replace(from=\"[\", to=\"\") }}",
            )
        },
        "`heavy` is named in what programs read of its page without its signal word",
    );
}

#[test]
fn a_drawing_that_names_without_the_signal_word() {
    refuses(
        "family.html",
        |t| {
            t.replace(
                "{{ strip | safe }}",
                "<svg><desc>Floor rest; Half turn.</desc></svg>",
            )
        },
        "`half-turn` is named as \"Half turn.\" in a drawing without its signal word",
    );
}

/// Every surface of the shipped theme that names a skill, a family or a guarded movement says so.
#[test]
fn what_is_written_bears_every_mark() {
    let dir = curriculum();
    let note = dir.path().join("content/notes/floor-rest.md");
    fs::write(
        &note,
        "## Before the upside stand\n\nHeavy lifts come later; `a heavy lift` stays as it is, [an Upside stand](page:cautions) too.\n",
    )
    .expect("a note");
    let out = publish(dir.path());
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let read = |file: &str| {
        fs::read_to_string(dir.path().join("site").join(file))
            .unwrap_or_else(|e| panic!("{file}: {e}"))
    };
    for (file, text) in [
        ("upside.html", "<title>Upside stand [warning] ·"),
        ("stand.html", "<title>To stand [warning] ·"),
        ("turns.html", "<title>Slow turns [warning] ·"),
        ("stand.html", "\"name\":\"To stand [warning]\""),
        ("index.html", "\"name\":\"To stand [warning]\""),
        (
            "turns.html",
            "<desc>Half turn [warning]; Whole turn [warning].</desc>",
        ),
        ("self-test-stand.html", "To stand [warning]"),
        ("data/search.js", "\"stand\",\"To stand\",\"warning\""),
        ("data/search.js", "\"turns\",\"Slow turns\",\"warning\""),
        ("data/tables.js", "\"name\":\"To stand [warning]\""),
        (
            "floor-rest.html",
            "data-movement=\"upside\"><a href=\"upside.html\">upside stand</a>",
        ),
        (
            "floor-rest.html",
            "data-movement=\"heavy\"><a href=\"heavy.html\">Heavy lifts</a>",
        ),
        ("floor-rest.html", "<code>a heavy lift</code>"),
        ("floor-rest.html", "id=\"note-before-the-upside-stand\""),
    ] {
        assert!(
            read(file).contains(text),
            "{file} does not say {text}\n{}",
            read(file)
        );
    }
    let data: serde_json::Value =
        serde_json::from_str(&read("data/curriculum.json")).expect("JSON");
    for record in [&data["skills"][0], &data["families"][0]] {
        assert_eq!(record["signal"], "warning", "{record}");
        assert!(
            record["cautions"].as_array().is_some_and(|c| !c.is_empty()),
            "{record}"
        );
    }
}

#[test]
fn skills_and_families_in_data_search_and_tables() {
    use rungbook::proof::proofread;
    use rungbook::site::audit::Auditor;
    let dir = curriculum();
    let snapshot = rungbook::io::snapshot(dir.path()).expect("a folder");
    let proof = proofread(&snapshot);
    let auditor = Auditor::new(&proof.curriculum);
    let says = |path: &str, text: &str| -> Vec<String> {
        let faults = auditor.file(path, text.as_bytes());
        faults.into_iter().map(|f| f.says).collect()
    };
    let data = r#"{"movements":[],"skills":[{"id":"stand","cautions":[]}],"families":[{"id":"turns","cautions":["inverted"]}]}"#;
    let bare =
        ["stand", "turns"].map(|id| format!("`{id}` stands in the data without its cautions"));
    assert_eq!(says("data/curriculum.json", data), bare);
    let search = "globalThis.rungbookSearch = [[\"skill\",\"stand\",\"To stand\",\"\",\"\",\"\",[],\"\"]];\n";
    let bare = ["`stand` stands in the search without its caution mark"];
    assert_eq!(says("data/search.js", search), bare);
    let tables = |name: &str| {
        format!(
            "globalThis.rungbookTables = {{\"ids\":[],\"marks\":[],\"mark\":[],\"skills\":[{{\"id\":\"stand\",\"name\":\"{name}\"}}]}};\n"
        )
    };
    let bare = ["`stand` stands in the tables without its caution mark"];
    assert_eq!(says("data/tables.js", &tables("To stand")), bare);
    assert!(says("data/tables.js", &tables("To stand [warning]")).is_empty());
}

/// What the pieces of pages tell, against what reading every page as a whole finds: a page told to be sound is sound. Returns how
/// many pages there are, how many of them are told to be sound, and how many are.
fn told_and_found(built: &rungbook::site::Outcome) -> (usize, usize, usize) {
    let pages = built.site().expect("a site").both_ways().expect("pages");
    for (path, told, faults) in &pages {
        assert!(
            !told || faults.is_empty(),
            "{path} is told to be sound: {faults:?}"
        );
    }
    let told = pages.iter().filter(|(_, told, _)| *told).count();
    let found = pages
        .iter()
        .filter(|(.., faults)| faults.is_empty())
        .count();
    (pages.len(), told, found)
}

/// The site of a folder's files whose theme is used in pieces, or not, whosever it is.
fn built(snapshot: &Snapshot, in_pieces: bool) -> rungbook::site::Outcome {
    use rungbook::site::{Options, Theme, build};
    let plain = build(snapshot, &Options::default());
    let school = plain.proof().curriculum.school();
    let theme = Theme::load(&school.theme, snapshot, plain.proof().curriculum.words());
    let theme = theme.expect("a theme").in_pieces(in_pieces);
    let theme = Some(std::sync::Arc::new(theme));
    build(snapshot, &Options { theme })
}

/// Holds the site of pieces against the one without them, page by page; of the pages each `share`-th. Gives both.
fn same_in_pieces(snapshot: &Snapshot, share: usize) -> [rungbook::site::Outcome; 2] {
    let (ropes, whole) = (built(snapshot, true), built(snapshot, false));
    let (ropes_of, whole_of) = (
        ropes.renderer().expect("a site"),
        whole.renderer().expect("a site"),
    );
    assert_eq!(ropes_of.paths(), whole_of.paths());
    let written = |i: &usize| !ropes_of.is_drawn(*i) && *i != ropes_of.last();
    for i in (0..ropes_of.len()).filter(written).step_by(share) {
        let (one, other) = (
            ropes_of.render(i).expect("a file"),
            whole_of.render(i).expect("a file"),
        );
        assert!(one == other, "{} differs", one.path);
        assert!(
            !String::from_utf8_lossy(&one.bytes).contains("<piece-"),
            "{}",
            one.path
        );
    }
    [ropes, whole]
}

/// The files of a folder.
fn files(dir: &Path) -> Snapshot {
    rungbook::io::snapshot(dir).expect("a folder")
}

/// Every page of a site is the same, made of pieces or as one text, and is told right by its pieces.
#[test]
fn pages_of_pieces_are_as_pages_that_are_one_text() {
    let shipped = Path::new(env!("CARGO_MANIFEST_DIR"));
    let small = curriculum();
    for dir in [shipped, small.path()] {
        let [ropes, whole] = same_in_pieces(&files(dir), 1);
        // All of them: none is read twice.
        let (pages, told, found) = told_and_found(&ropes);
        assert_eq!((pages, pages), (told, found));
        assert_eq!(told_and_found(&whole), (pages, 0, pages));
    }
}

/// The same of a school that writes from the right.
#[test]
fn pages_of_pieces_are_the_same_in_hebrew() {
    let dir = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/words/he");
    let [ropes, _] = same_in_pieces(&files(&dir), 1);
    let (pages, told, found) = told_and_found(&ropes);
    assert_eq!((pages, pages), (told, found));
}

/// The same of a curriculum made for its size; of its pages a share.
#[test]
fn pages_of_pieces_are_the_same_of_a_thousand_movements() {
    let dir = tempfile::tempdir().expect("a folder");
    generate::write(dir.path(), generate::Shape::tangled(1000));
    same_in_pieces(&files(dir.path()), 23);
}

/// The same of texts that would be scripts, in every place for a text, and of odd words of the interface.
#[test]
fn pages_of_pieces_are_the_same_whatever_is_written() {
    let (mut sites, mut told_of) = (0, 0);
    for turn in [0, 19, 38, 57] {
        let payload = |n: usize| {
            let one = payloads::PAYLOADS[(n + turn) % payloads::PAYLOADS.len()];
            format!("{one} {n}")
        };
        let mut all = records::filled(records::RECORDS, payload);
        let notes = records::NOTES.iter();
        all.extend(notes.map(|(path, text)| (path.to_string(), text.to_string())));
        if turn == 0 {
            let (path, text) = records::WORDS;
            all.push((path.into(), text.into()));
        }
        let files = all.into_iter().map(|(path, text)| SourceFile {
            path,
            content: Content::Text(text),
        });
        let [ropes, _] = same_in_pieces(&Snapshot::new(files.collect()), 1);
        let (pages, told, found) = told_and_found(&ropes);
        assert_eq!(found, pages, "turn {turn}");
        sites += usize::from(pages > 0);
        told_of += told;
    }
    assert!(
        sites == 4 && told_of > 60,
        "{told_of} pages told of by their pieces"
    );
}
