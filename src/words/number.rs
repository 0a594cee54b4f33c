//! Numbers by language: digits, marks, and the plural category they ask for.

use super::Value;
use icu_decimal::options::{DecimalFormatterOptions, GroupingStrategy};
use icu_decimal::{DecimalFormatter, input::Decimal};
use icu_plurals::{PluralCategory, PluralRules};
use icu_provider::prelude::icu_locale_core::Locale;

/// How a language writes and counts.
#[derive(Debug)]
pub(super) struct Numbers {
    plural: PluralRules,
    decimal: DecimalFormatter,
    year: DecimalFormatter,
    /// Small whole numbers are written as the program writes them.
    bare: bool,
}

impl Numbers {
    /// Of a language tag; English where it is none.
    pub fn new(language: &str) -> Numbers {
        let locale: Locale = language.parse().unwrap_or(Locale::UNKNOWN);
        let decimal = |grouping: GroupingStrategy| {
            let mut options = DecimalFormatterOptions::default();
            options.grouping_strategy = Some(grouping);
            DecimalFormatter::try_new((&locale).into(), options)
                .expect("the data of every language are compiled in")
        };
        let mut numbers = Numbers {
            plural: PluralRules::try_new_cardinal((&locale).into())
                .expect("the data of every language are compiled in"),
            // From five digits on: four read well without.
            decimal: decimal(GroupingStrategy::Min2),
            year: decimal(GroupingStrategy::Never),
            bare: false,
        };
        numbers.bare = numbers.show(Value::Whole(1234)) == "1234";
        numbers
    }

    pub fn show(&self, value: Value<'_>) -> String {
        match value {
            Value::Text(text) => text.to_string(),
            Value::Whole(n @ 0..10_000) if self.bare => n.to_string(),
            Value::Micro(n @ 0..10_000_000_000) if self.bare && n % 1_000_000 == 0 => {
                (n / 1_000_000).to_string()
            }
            number => self.decimal.format(&decimal_of(number)).to_string(),
        }
    }

    /// With one decimal, rounded as Rust prints it.
    pub fn show_tenth(&self, n: f64) -> String {
        let digits = format!("{n:.1}").replace('.', "");
        let mut decimal = Decimal::from(digits.parse::<i64>().unwrap_or(0));
        decimal.multiply_pow10(-1);
        self.decimal.format(&decimal).to_string()
    }

    pub fn show_year(&self, year: i64) -> String {
        self.year.format(&Decimal::from(year)).to_string()
    }

    pub fn category(&self, value: Value<'_>) -> &'static str {
        match self.plural.category_for(&decimal_of(value)) {
            PluralCategory::Zero => "zero",
            PluralCategory::One => "one",
            PluralCategory::Two => "two",
            PluralCategory::Few => "few",
            PluralCategory::Many => "many",
            PluralCategory::Other => "other",
        }
    }
}

fn decimal_of(value: Value<'_>) -> Decimal {
    match value {
        Value::Text(_) => Decimal::from(0),
        Value::Whole(n) => Decimal::from(n),
        Value::Micro(n) => {
            let mut decimal = Decimal::from(n);
            decimal.multiply_pow10(-6);
            decimal.trim_end();
            decimal
        }
    }
}
