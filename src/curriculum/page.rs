//! The pages that every site has: one row each. Their addresses are refused as ids, and notes, links, navigation and the
//! offline worker read the same rows.

/// How the site makes a page of this name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Made {
    /// By a template of its own.
    Once,
    /// A long table on as many pages as it needs: `movements.html`, `movements-2.html`.
    Table,
    /// In another way, or not yet: the name is kept free.
    Otherwise,
}

/// Where the navigation shows a page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Place {
    /// On top of every page.
    Top,
    /// At the foot, for whom it serves.
    Foot(Group),
    /// Nowhere by itself: the school's name leads home, other pages lead to the rest.
    None,
}

/// Who looks for a page at the foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Group {
    Safety,
    LookUp,
    School,
}

impl Group {
    pub const ALL: [Group; 3] = [Group::Safety, Group::LookUp, Group::School];

    /// Its key below `navigation` in the words files.
    pub fn word(self) -> &'static str {
        match self {
            Group::Safety => "safety",
            Group::LookUp => "look_up",
            Group::School => "school",
        }
    }
}

/// One page that every site has.
#[derive(Debug, PartialEq, Eq)]
pub struct Page {
    /// Its address without `.html`.
    pub name: &'static str,
    /// Its template without `.html`, which is also the class of its body and its key below `page` in the words files.
    pub template: &'static str,
    /// Its label in the navigation, below `shared` in the words files.
    pub label: &'static str,
    pub made: Made,
    pub place: Place,
    /// A note of its name adds words to it.
    pub extendable: bool,
    /// The worker keeps it before it is visited: everything that a self-test and a session need but the skill's own pages.
    pub kept_offline: bool,
}

const ROW: Page = Page {
    name: "",
    template: "",
    label: "",
    made: Made::Once,
    place: Place::None,
    extendable: false,
    kept_offline: false,
};

const fn row(name: &'static str, label: &'static str, place: Place) -> Page {
    Page {
        name,
        template: name,
        label,
        place,
        ..ROW
    }
}

const fn reserved(name: &'static str) -> Page {
    Page {
        made: Made::Otherwise,
        ..row(name, "", Place::None)
    }
}

/// All rows, in the order of the navigation.
pub const PAGES: &[Page] = &[
    Page {
        template: "home",
        extendable: true,
        kept_offline: true,
        ..row("index", "", Place::None)
    },
    Page {
        made: Made::Table,
        extendable: true,
        kept_offline: true,
        ..row("self-test", "self_test", Place::Top)
    },
    Page {
        kept_offline: true,
        ..row("today", "today", Place::Top)
    },
    Page {
        kept_offline: true,
        ..row("where-i-stand", "where_i_stand", Place::Top)
    },
    Page {
        made: Made::Table,
        ..row("movements", "movements_head", Place::Top)
    },
    Page {
        kept_offline: true,
        ..row("search", "search", Place::Top)
    },
    Page {
        extendable: true,
        kept_offline: true,
        ..row("if-it-hurts", "if_it_hurts", Place::Foot(Group::Safety))
    },
    Page {
        extendable: true,
        kept_offline: true,
        ..row(
            "before-you-start",
            "before_you_start",
            Place::Foot(Group::Safety),
        )
    },
    Page {
        extendable: true,
        kept_offline: true,
        ..row("cautions", "cautions", Place::Foot(Group::Safety))
    },
    Page {
        extendable: true,
        kept_offline: true,
        ..row(
            "if-you-are-stuck",
            "if_you_are_stuck",
            Place::Foot(Group::LookUp),
        )
    },
    Page {
        kept_offline: true,
        ..row("faults", "what_do_you_see", Place::Foot(Group::LookUp))
    },
    Page {
        ..row("equipment", "what_do_you_have", Place::Foot(Group::LookUp))
    },
    Page {
        kept_offline: true,
        ..row("words", "what_does_it_mean", Place::Foot(Group::LookUp))
    },
    row(
        "about-the-numbers",
        "about_the_numbers",
        Place::Foot(Group::LookUp),
    ),
    Page {
        extendable: true,
        ..row(
            "about-the-coach",
            "about_the_coach",
            Place::Foot(Group::School),
        )
    },
    Page {
        ..row("changes", "what_changed", Place::Foot(Group::School))
    },
    Page {
        kept_offline: true,
        ..row("my-people", "my_people", Place::Foot(Group::School))
    },
    Page {
        ..row("data", "open_data", Place::Foot(Group::School))
    },
    reserved("booklet"),
    reserved("map"),
    reserved("not-found"),
    reserved("offline"),
];

/// The row of a page by its address without `.html`.
pub fn page(name: &str) -> Option<&'static Page> {
    PAGES.iter().find(|page| page.name == name)
}

/// Whether a note of this name adds words to a page that every site has.
pub fn is_extendable(name: &str) -> bool {
    page(name).is_some_and(|page| page.extendable)
}

/// Whether `page:name` in a note leads to a page that every site has.
pub fn is_linkable(name: &str) -> bool {
    page(name).is_some_and(|page| page.made != Made::Otherwise)
}
