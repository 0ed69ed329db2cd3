//! The accessibility rules of axe-core, run on an open page.

use std::fmt;
use std::path::PathBuf;

use serde::Deserialize;

use crate::Failed;
use crate::sheet::Sheet;

/// The variable in which `scripts/test` gives what `scripts/setup` prints: the folder of checkers.
const TOOLS: &str = "SPILE_TOOLS";

/// A rule that an element of the page breaks.
#[derive(Debug, Clone, Deserialize)]
pub struct Breach {
    /// The rule's name, as axe-core has it.
    pub id: String,
    /// What the rule asks for.
    pub help: String,
    /// The elements that break it, each by a selector with what is wrong with it.
    pub places: Vec<String>,
}

impl fmt::Display for Breach {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}\n  {}", self.id, self.help, self.places.join("\n  "))
    }
}

impl Sheet {
    /// The rules of WCAG 2.2, levels A and AA, that the page breaks as it stands.
    ///
    /// # Errors
    /// If axe-core is not installed, or the page does not answer.
    pub async fn breaches(&self) -> Result<Vec<Breach>, Failed> {
        let rules = axe()?;
        // The rules are put in beside the page's own script, and only once.
        let is_in: bool = self.ask("typeof window.axe === 'object'").await?;
        if !is_in {
            self.page().evaluate(rules).await?;
        }
        self.ask(
            "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] })
                .then(found => found.violations.map(({ id, help, nodes }) => ({
                    id,
                    help,
                    places: nodes.map(node => `${node.target.join(' ')}: ${node.failureSummary}`),
                })))",
        )
        .await
    }
}

/// The text of axe-core.
fn axe() -> Result<String, Failed> {
    let tools = std::env::var_os(TOOLS).ok_or_else(|| {
        format!("{TOOLS} is not set: run scripts/test, or set it to what scripts/setup prints")
    })?;
    let file = PathBuf::from(tools).join("../axe_playwright_python/axe.min.js");
    std::fs::read_to_string(&file).map_err(|why| format!("{}: {why}", file.display()).into())
}
