//! Batteries: kinds.

use serde::Deserialize;

/// What a battery is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Chemistry {
    /// Lead-acid with liquid electrolyte.
    Flooded,
    /// Lead-acid with glass mat.
    Agm,
    /// Lead-acid with gel.
    Gel,
    /// Lithium iron phosphate.
    Lfp,
}

impl Chemistry {
    /// Every kind.
    pub const ALL: [Self; 4] = [Self::Flooded, Self::Agm, Self::Gel, Self::Lfp];

    /// The name it goes by in files.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Flooded => "flooded",
            Self::Agm => "agm",
            Self::Gel => "gel",
            Self::Lfp => "lfp",
        }
    }

    /// The kind of that name.
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|c| c.key() == key)
    }
}
