//! Pictures as published, read back by the `image` crate: cards and icons, photographs in smaller widths without their place,
//! clips with their room on the page.

use image::{DynamicImage, ImageFormat, Rgb, RgbImage, Rgba, RgbaImage};
use rungbook::site;
use rungbook::source::{Content, Snapshot, SourceFile};
use std::collections::BTreeMap;
use std::io::Cursor;

type Files = BTreeMap<String, Vec<u8>>;

fn text(path: &str, text: &str) -> SourceFile {
    SourceFile {
        path: path.into(),
        content: Content::Text(text.into()),
    }
}

fn bytes(name: &str, bytes: Vec<u8>) -> SourceFile {
    SourceFile {
        path: format!("content/pictures/{name}"),
        content: Content::Bytes(bytes),
    }
}

/// Three movements, one of them inverted, two skills; `extra` stands in the first movement.
fn curriculum(extra: &str, more: Vec<SourceFile>) -> Snapshot {
    let movement = |id: &str, name: &str, position: &str, rest: &str| {
        let record = format!(
            "movement: {id}\nname: {name}\npattern: balance\nposition: {position}\nload: body\nequipment: []\nsummary: Do it.\nstandard: 8 reps\ntest: {{ how: Try }}\ncues: [quiet]\nfaults: [{{ see: noise }}]\n{rest}"
        );
        text(&format!("content/movements/{id}.yaml"), &record)
    };
    let mut files = vec![
        text(
            "content/school.yaml",
            "school: Test Room\naddress: https://test.example/c/\nlanguage: pt-BR\nunits: metric\nequipment: {}\n",
        ),
        movement("rest", "Floor rest", "prone", extra),
        movement(
            "upside",
            "Upside stand",
            "inverted",
            "exit: Step down.\nneeds: [rest]\n",
        ),
        movement("alone", "Alone", "prone", ""),
        text(
            "content/skills/stand.yaml",
            "skill: stand\nname: To stand\ngoal: upside\n",
        ),
        text(
            "content/skills/far.yaml",
            "skill: far\nname: עמידת ידיים\ngoal: upside\n",
        ),
    ];
    files.extend(more);
    Snapshot::new(files)
}

/// The site in memory, and the findings' rules.
fn site(snapshot: &Snapshot) -> (Files, Vec<&'static str>) {
    let built = site::build(snapshot, &site::Options::default());
    let findings = &built.proof().findings;
    let rules: Vec<&str> = findings.iter().map(|f| f.rule.name()).collect();
    assert!(!findings.has_errors(), "{rules:?}");
    let plan = built.renderer().expect("a site");
    let files: Files = (0..plan.len())
        .map(|i| plan.render(i).expect("a file"))
        .map(|f| (f.path, f.bytes))
        .collect();
    for (path, bytes) in &files {
        assert_eq!(built.audit(path, bytes), [], "{path}");
    }
    assert_eq!(files.len(), plan.len(), "two files of one name");
    (files, rules)
}

fn page<'a>(files: &'a Files, path: &str) -> &'a str {
    std::str::from_utf8(&files[path]).expect("a page is text")
}

/// The values of an attribute or of a meta property on a page.
fn values<'a>(html: &'a str, before: &str) -> Vec<&'a str> {
    html.split(before)
        .skip(1)
        .map(|rest| rest.split('"').next().expect("a value"))
        .collect()
}

/// The files that a page's lists of sizes name, with their widths.
fn listed(html: &str) -> Vec<(String, u32)> {
    values(html, " srcset=\"")
        .iter()
        .flat_map(|list| list.split(", "))
        .map(|entry| {
            let (name, width) = entry.split_once(' ').expect("a name and a width");
            let width = width.strip_suffix('w').and_then(|w| w.parse().ok());
            (name.replace("%20", " "), width.expect("a width"))
        })
        .collect()
}

/// A picture with some grain, its left half red, its right half blue.
fn halves(width: u32, height: u32) -> RgbImage {
    RgbImage::from_fn(width, height, |x, y| {
        let grain = ((x * 7919 + y * 104_729) % 31) as u8;
        match x < width / 2 {
            true => Rgb([200 + grain, grain, grain]),
            false => Rgb([grain, grain, 200 + grain]),
        }
    })
}

fn packed(picture: impl Into<DynamicImage>, format: ImageFormat) -> Vec<u8> {
    let mut out = Cursor::new(Vec::new());
    picture
        .into()
        .write_to(&mut out, format)
        .expect("a picture");
    out.into_inner()
}

/// A photograph as a camera writes it: a part of Exif data with the orientation and the place, a remark, something behind it.
fn photograph(orientation: u8) -> Vec<u8> {
    let mut exif = b"Exif\0\0MM\0*\0\0\0\x08\0\x02".to_vec();
    exif.extend_from_slice(&[1, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0]);
    exif.extend_from_slice(&[0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 38, 0, 0, 0, 0]);
    exif.extend_from_slice(&[0, 1, 0, 1, 0, 2, 0, 0, 0, 2, b'N', 0, 0, 0, 0, 0, 0, 0]);
    exif.extend_from_slice(b"GPS 52.5163 13.3777");
    let mut out = vec![0xff, 0xd8, 0xff, 0xe1];
    out.extend_from_slice(&(exif.len() as u16 + 2).to_be_bytes());
    out.extend_from_slice(&exif);
    out.extend_from_slice(b"\xff\xfe\0\x0bGPS here.");
    out.extend_from_slice(&packed(halves(1200, 800), ImageFormat::Jpeg)[2..]);
    out.extend_from_slice(b"GPS in a clip behind the picture");
    out
}

fn says(bytes: &[u8], word: &[u8]) -> bool {
    bytes.windows(word.len()).any(|w| w == word)
}

#[test]
fn a_photograph_has_smaller_widths_and_no_place() {
    let names = ["on floor.jpg", "turned.JPG", "fine.png", "web.webp"];
    let pictures: Vec<String> = names
        .iter()
        .map(|n| format!("{{ file: {n}, alt: Seen }}"))
        .collect();
    let note = text(
        "content/notes/rest.md",
        "![Seen again](picture:turned.JPG)\n",
    );
    let mut clear = RgbaImage::from_pixel(700, 700, Rgba([10, 200, 30, 255]));
    clear.put_pixel(0, 0, Rgba([0, 0, 0, 0]));
    let snapshot = curriculum(
        &format!("pictures: [{}]\n", pictures.join(", ")),
        vec![
            note,
            bytes("on floor.jpg", photograph(1)),
            bytes("turned.JPG", photograph(6)),
            bytes("fine.png", packed(halves(1201, 601), ImageFormat::Png)),
            bytes("web.webp", packed(halves(1250, 400), ImageFormat::WebP)),
        ],
    );
    let (files, rules) = site(&snapshot);
    assert_eq!(rules.iter().filter(|r| r.contains("picture")).count(), 0);

    // What a page names is there, in the width that it says.
    let html = page(&files, "rest.html");
    let found = listed(html);
    let with = |part: &str| found.iter().filter(|(n, _)| n.contains(part)).count();
    assert_eq!(
        (with("on floor"), with("fine"), with("web")),
        (3, 3, 3),
        "{found:?}"
    );
    assert_eq!(
        with("turned"),
        4,
        "480 and 800 wide, in the record and in the note"
    );
    for (name, width) in &found {
        let picture = image::load_from_memory(&files[name]).expect("it can be read");
        let own = if name == "pictures/turned.JPG" {
            picture.height()
        } else {
            picture.width()
        };
        assert_eq!(own, *width, "{name}");
        assert!(!says(&files[name], b"GPS"), "{name} still says where");
    }
    let room = |name: &str| {
        let (_, rest) = html
            .split_once(&format!("src=\"pictures/{name}\""))
            .expect(name);
        let tag = rest.split('>').next().expect("a tag").to_string();
        assert!(
            tag.contains("decoding=\"async\"")
                && tag.contains("loading=\"lazy\"")
                && tag.contains(" sizes=\"")
        );
        let side = |key: &str| {
            values(&tag, &format!(" {key}=\""))[0]
                .parse::<u32>()
                .expect("a number")
        };
        (side("width"), side("height"))
    };
    assert_eq!(room("on%20floor.jpg"), (1200, 800));
    assert_eq!(room("turned.JPG"), (800, 1200));

    // The originals: not packed again, turned as before.
    let original = photograph(6);
    let published = &files["pictures/turned.JPG"];
    assert!(published.len() < original.len());
    let tables = |b: &[u8]| {
        b.windows(2)
            .position(|w| w == [0xff, 0xdb])
            .expect("a table")
    };
    let end = original.len() - b"GPS in a clip behind the picture".len();
    assert_eq!(
        published[tables(published)..],
        original[tables(&original)..end]
    );
    assert!(says(published, &[1, 0x12, 0, 3, 0, 0, 0, 1, 0, 6]));

    // Upright: the left half comes to lie at the top.
    let small = |name: &str| {
        image::load_from_memory(&files[name])
            .expect("a picture")
            .to_rgb8()
    };
    let near = |picture: &RgbImage, x: u32, y: u32, red: bool| {
        let Rgb([r, _, b]) = *picture.get_pixel(x, y);
        assert_eq!(r > 180, red, "{x} {y} {r} {b}");
        assert_eq!(b > 180, !red, "{x} {y} {r} {b}");
    };
    let turned = small("pictures/turned-480.jpg");
    assert_eq!(turned.dimensions(), (480, 720));
    near(&turned, 20, 20, true);
    near(&turned, 460, 20, true);
    near(&turned, 20, 700, false);
    for name in [
        "on floor-480.jpg",
        "on floor-960.jpg",
        "fine-480.png",
        "fine-960.png",
        "web-480.jpg",
    ] {
        let picture = small(&format!("pictures/{name}"));
        let (width, height) = picture.dimensions();
        near(&picture, 20, height - 20, true);
        near(&picture, width - 20, 20, false);
        // The grain averages out to its mean, 15, give or take what the packing costs.
        let Rgb([r, g, _]) = *picture.get_pixel(width / 4, height / 2);
        assert!(
            r.abs_diff(215) <= 8 && g.abs_diff(15) <= 8,
            "{name} {r} {g}"
        );
    }
    let booklet = page(&files, "booklet-stand.html");
    assert!(
        listed(booklet)
            .iter()
            .any(|(n, _)| n == "pictures/on floor-480.jpg")
    );
    assert!(!booklet.contains("loading=\"lazy\""));

    // The same bytes from another process, which has made none of them before.
    let dir = tempfile::tempdir().expect("a folder");
    for (_, file) in snapshot.files() {
        let path = dir.path().join(&file.path);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        match &file.content {
            Content::Bytes(bytes) => std::fs::write(path, bytes),
            _ => std::fs::write(
                path,
                snapshot.text(snapshot.find(&file.path).expect("a file")),
            ),
        }
        .expect("a file is written");
    }
    let run = std::process::Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["publish", "--from"])
        .arg(dir.path())
        .env("RAYON_NUM_THREADS", "1")
        .output()
        .expect("the program runs");
    assert!(
        run.status.success(),
        "{}",
        String::from_utf8_lossy(&run.stderr)
    );
    for (path, bytes) in &files {
        let written = std::fs::read(dir.path().join("site").join(path)).expect(path);
        assert!(written == *bytes, "{path} differs");
    }
}

#[test]
fn what_cannot_be_made_smaller_stands_as_it_is() {
    let whole = photograph(1);
    let mut bomb = packed(RgbImage::new(1, 1), ImageFormat::Png);
    // The header says 60000 by 60000; its check no longer holds either.
    bomb[16..24].copy_from_slice(&[0, 0, 0xea, 0x60, 0, 0, 0xea, 0x60]);
    let own = b"\xff\xd8\xff\xe0\0\x04\x01\x02\xff\xda\0\x02\x09\xff\xd9".to_vec();
    let snapshot = curriculum(
        "pictures: [{ file: short.jpg, alt: A }, { file: bomb.png, alt: B }, { file: small.png, alt: C }, { file: own.jpg, alt: D }, { file: flat.png, alt: E }]\n",
        vec![
            bytes("short.jpg", whole[..whole.len() / 2].to_vec()),
            bytes("bomb.png", bomb.clone()),
            bytes("small.png", packed(halves(300, 200), ImageFormat::Png)),
            bytes("own.jpg", photograph(1)),
            bytes("own-480.jpg", own.clone()),
            bytes("OWN-960.JPG", own.clone()),
            bytes(
                "flat.png",
                packed(image::GrayImage::new(900, 900), ImageFormat::Png),
            ),
        ],
    );
    let (files, rules) = site(&snapshot);
    assert_eq!(
        rules.iter().filter(|r| **r == "broken-picture").count(),
        4,
        "one ends early, one is too large, two cannot be read: {rules:?}"
    );
    let proof = rungbook::proof::proofread(&snapshot);
    let said = |words: &str| {
        proof
            .findings
            .iter()
            .filter(|f| f.message.contains(words))
            .count()
    };
    assert_eq!(said("60000 by 60000 pixels"), 1);
    assert_eq!(said("cannot be read"), 2);
    let html = page(&files, "rest.html");
    for (name, _) in listed(html) {
        assert!(
            !name.contains("short")
                && !name.contains("bomb")
                && !name.contains("small")
                && !name.contains("own"),
            "{name}"
        );
        assert!(files[&name].len() <= files["pictures/flat.png"].len());
    }
    assert_eq!(files["pictures/own-480.jpg"], own);
    assert_eq!(files["pictures/bomb.png"], bomb);
    assert!(!says(&files["pictures/short.jpg"], b"GPS"));
    assert!(html.contains("src=\"pictures/short.jpg\""));
}

#[test]
fn a_clip_has_its_room_and_a_poster() {
    let part = |name: &[u8], body: &[u8]| {
        let size = (body.len() as u32 + 8).to_be_bytes();
        [&size[..], name, body].concat()
    };
    let clip = [
        part(b"ftyp", b"isom"),
        part(b"moov", &part(b"udta", b"GPS 52.5163 13.3777")),
    ]
    .concat();
    let snapshot = curriculum(
        "clip: { file: rest.mp4, poster: still.jpg, alt: Lying on the floor }\n",
        vec![
            bytes("rest.mp4", clip.clone()),
            bytes("still.jpg", photograph(6)),
        ],
    );
    let (files, rules) = site(&snapshot);
    assert!(!rules.contains(&"clip-poster") && !rules.contains(&"broken-picture"));
    let html = page(&files, "rest.html");
    let video = html
        .split("<video")
        .nth(1)
        .expect("a clip")
        .split('>')
        .next();
    let video = video.expect("a tag");
    for part in [
        "controls",
        "preload=\"none\"",
        "src=\"pictures/rest.mp4\"",
        "poster=\"pictures/still.jpg\"",
        "width=\"800\" height=\"1200\"",
        "aria-label=\"Lying on the floor\"",
    ] {
        assert!(video.contains(part), "{part} in {video}");
    }
    assert_eq!(files["pictures/rest.mp4"].len(), clip.len());
    assert!(!says(&files["pictures/rest.mp4"], b"GPS"));
}

#[test]
fn every_page_has_a_picture_for_its_links() {
    let snapshot = curriculum(
        "pictures: [{ file: seen.jpg, alt: Seen }]\n",
        vec![bytes("seen.jpg", photograph(6))],
    );
    let (files, _) = site(&snapshot);
    let one = |html: &str, name: &str| {
        let found = values(html, &format!("<meta property=\"og:{name}\" content=\""));
        assert_eq!(found.len(), 1, "og:{name}");
        found[0].to_string()
    };
    let mut pages = 0;
    for path in files.keys().filter(|p| p.ends_with(".html")) {
        let html = page(&files, path);
        let address = one(html, "image");
        let name = address
            .strip_prefix("https://test.example/c/")
            .expect("an absolute address");
        let picture = image::load_from_memory(&files[name]).expect("it can be read");
        let sides = (picture.width(), picture.height());
        let said = (one(html, "image:width"), one(html, "image:height"));
        assert_eq!(said, (sides.0.to_string(), sides.1.to_string()), "{path}");
        assert!(path == "rest.html" || sides == (1200, 630), "{path}");
        assert!(!one(html, "image:alt").is_empty() && one(html, "locale") == "pt_BR");
        pages += 1;
    }
    assert!(pages > 20);
    let image = |path: &str| {
        one(page(&files, path), "image")
            .rsplit_once("/c/")
            .expect("an address")
            .1
            .to_string()
    };
    assert_eq!(image("index.html"), "cards/index.png");
    assert_eq!(image("alone.html"), "cards/index.png");
    assert_eq!(image("upside.html"), "cards/far.png");
    assert_eq!(image("self-test-stand.html"), "cards/stand.png");
    assert_eq!(image("rest.html"), "pictures/seen-480.jpg");
    // A cautioned movement is not named without its mark.
    assert_eq!(
        one(page(&files, "upside.html"), "title"),
        "Upside stand [warning]"
    );
    assert_eq!(
        one(page(&files, "stand.html"), "image:alt"),
        "To stand [warning]: 1 rung up. Test Room"
    );
    assert_eq!(one(page(&files, "rest.html"), "title"), "Floor rest");
}

#[test]
fn a_card_shows_the_name_where_it_has_the_letters() {
    let (files, _) = site(&curriculum("", Vec::new()));
    let ink = |name: &str, columns: std::ops::Range<u32>, rows: std::ops::Range<u32>| {
        let card = image::load_from_memory(&files[name])
            .expect("a card")
            .to_rgb8();
        let ground = *card.get_pixel(0, 0);
        rows.flat_map(|y| columns.clone().map(move |x| (x, y)))
            .filter(|(x, y)| *card.get_pixel(*x, *y) != ground)
            .count()
    };
    let name = |card: &str| ink(card, 60..800, 200..480);
    let (drawing, mark) = (
        |card: &str| ink(card, 830..1140, 40..600),
        |card: &str| ink(card, 60..300, 510..570),
    );
    assert!(name("cards/stand.png") > 2000 && name("cards/index.png") > 2000);
    assert_eq!(name("cards/far.png"), 0);
    assert_eq!(drawing("cards/far.png"), drawing("cards/stand.png"));
    assert!(drawing("cards/far.png") > 3000);
    assert!(mark("cards/far.png") > 1000 && mark("cards/index.png") == 0);
    assert!(files["cards/stand.png"].len() < 20_000);
    // Kept beforehand by nobody.
    assert!(!says(&files["worker.js"], b"cards/") && !says(&files["theme/offline.js"], b"cards/"));
}

#[test]
fn the_icons_are_what_the_manifest_says() {
    let (files, _) = site(&curriculum("", Vec::new()));
    let manifest: serde_json::Value =
        serde_json::from_slice(&files["manifest.webmanifest"]).expect("JSON");
    let icons = manifest["icons"].as_array().expect("a list");
    let mut drawn = 0;
    for icon in icons.iter().filter(|i| i["type"] == "image/png") {
        let name = icon["src"].as_str().expect("a name");
        let picture = image::load_from_memory(&files[name]).expect("an icon");
        let sizes = format!("{}x{}", picture.width(), picture.height());
        assert_eq!(icon["sizes"], *sizes);
        drawn += 1;
        if icon["purpose"] == "maskable" {
            // Nothing but ground outside the circle that is always seen.
            let picture = picture.to_rgb8();
            let ground = *picture.get_pixel(0, 0);
            let (middle, safe) = (
                f64::from(picture.width()) / 2.0,
                f64::from(picture.width()) * 0.4,
            );
            for (x, y, pixel) in picture.enumerate_pixels() {
                let (dx, dy) = (f64::from(x) - middle, f64::from(y) - middle);
                assert!(*pixel == ground || dx.hypot(dy) <= safe + 1.0, "{x} {y}");
            }
        }
    }
    assert_eq!(drawn, 3);
}
