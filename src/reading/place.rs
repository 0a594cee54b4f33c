//! Which file is read as what, by where it lies.

/// The role of a file in a curriculum.
#[derive(Clone, Debug, PartialEq)]
pub enum Role {
    School,
    Cautions,
    Ledger,
    Movement,
    Skill,
    /// A note, by its id.
    Note(String),
    /// A page of its own, by its id.
    Page(String),
    Picture,
    /// Interface words, by the tag of their language.
    Words(String),
    /// Read by nobody; why, and what to do.
    Nobody(&'static str),
    /// Editors' and systems' own files: passed over.
    Ignored,
}

/// Pictures and clips, those too that are refused by their kind. Nothing else in the folder is published: a browser would run
/// some of it.
const PICTURES: &[&str] = &[
    "svg", "png", "jpg", "jpeg", "webp", "gif", "mp4", "m4v", "mov", "webm", "vtt", "avif", "heic",
    "heif", "tif", "tiff", "bmp",
];

/// Whether a path, from `content/` or `themes/` on, is an editor's or a system's own.
pub fn is_passed_over(inside: &str) -> bool {
    inside.split('/').any(|part| part.starts_with('.'))
        || [".tmp", ".swp", "~"].iter().any(|e| inside.ends_with(e))
}

/// The role of a path from the curriculum's folder, such as `content/movements/pull/row.yaml`.
pub fn role(path: &str) -> Role {
    let Some(inside) = path.strip_prefix("content/") else {
        return Role::Ignored;
    };
    let name = inside.rsplit('/').next().unwrap_or(inside);
    if is_passed_over(inside) {
        return Role::Ignored;
    }
    let (stem, extension) = name.rsplit_once('.').unwrap_or((name, ""));
    let folder = inside.split_once('/').map_or("", |(first, _)| first);
    match (folder, extension) {
        ("", "yaml") if stem == "school" => Role::School,
        ("", "yaml") if stem == "cautions" => Role::Cautions,
        ("", "yaml") if stem == "ledger" => Role::Ledger,
        // Read by who compares, and by nobody else.
        ("", "json") if stem == "standing" => Role::Ignored,
        ("movements", "yaml") => Role::Movement,
        ("skills", "yaml") => Role::Skill,
        ("notes", "md")
            if inside
                .strip_prefix("notes/pages/")
                .is_some_and(|rest| !rest.contains('/')) =>
        {
            Role::Page(stem.into())
        }
        ("notes", "md") => Role::Note(stem.into()),
        ("pictures", _) if PICTURES.contains(&extension.to_ascii_lowercase().as_str()) => {
            Role::Picture
        }
        ("pictures", _) => {
            Role::Nobody("pictures end in .svg, .png, .jpg, .webp or .gif, clips in .mp4 or .webm")
        }
        ("words", "yaml") => Role::Words(stem.into()),
        (_, "yml") => Role::Nobody("rename it so that it ends in .yaml"),
        ("movements" | "skills", "md") => {
            Role::Nobody("files here end in .yaml; a note goes to content/notes")
        }
        ("movements" | "skills", _) => Role::Nobody("files here end in .yaml"),
        ("notes", "yaml" | "txt" | "markdown" | "") => Role::Nobody(
            "rename it so that it ends in .md; a movement's file goes to content/movements",
        ),
        ("notes", _) => Role::Nobody("notes end in .md; pictures go to content/pictures"),
        ("families", "yaml") => Role::Nobody("a family's file goes to content/movements"),
        _ => Role::Nobody(
            "movements go to content/movements, skills to content/skills, notes to content/notes, pictures to content/pictures",
        ),
    }
}
