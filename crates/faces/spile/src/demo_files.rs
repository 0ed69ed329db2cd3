//! The demo builds, carried in the program so that it needs nothing else.

/// A demo build: its name, and its files with their texts.
pub struct DemoBuild {
    pub name: &'static str,
    pub files: &'static [(&'static str, &'static str)],
}

/// The files of a folder below `demo/`.
macro_rules! demo_build {
    ($name:literal: $($file:literal),* $(,)?) => {
        DemoBuild {
            name: $name,
            files: &[$(($file, include_str!(concat!("../../../../demo/", $name, "/", $file)))),*],
        }
    };
}

/// All demo builds.
pub const DEMO_BUILDS: &[DemoBuild] = &[
    demo_build!(
        "heron":
        "build.toml",
        "jobs/galley-fridge.toml",
        "jobs/lithium-and-inverter.toml",
        "parts/bank.toml",
        "parts/bench.toml",
        "parts/inverter-1600.toml",
        "parts/lidded-18.toml",
        "parts/lidded-32.toml",
        "parts/lidded-35.toml",
        "parts/lights.toml",
        "parts/lithium-230.toml",
        "parts/platform.toml",
        "parts/pump.toml",
        "parts/upright-92.toml",
    ),
    demo_build!(
        "tern":
        "build.toml",
        "jobs/heater.toml",
        "parts/battery.toml",
        "parts/diesel-heater.toml",
        "parts/fuel-can.toml",
        "parts/lidded-30.toml",
        "parts/lights.toml",
        "parts/pump.toml",
        "parts/reading-lamp.toml",
    ),
    demo_build!(
        "bittern":
        "build.toml",
        "jobs/roof-and-rack.toml",
        "parts/bank-24-230.toml",
        "parts/bank-24.toml",
        "parts/lights-24.toml",
        "parts/pump-24.toml",
        "parts/rear-box.toml",
        "parts/roof-fan.toml",
        "parts/upright-130.toml",
    ),
];

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;
    use std::fs;
    use std::path::Path;

    use super::DEMO_BUILDS;

    fn gather(folder: &Path, below: &str, files: &mut BTreeMap<String, String>) {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            let name = format!("{below}{}", path.file_name().unwrap().to_str().unwrap());
            if path.is_dir() {
                gather(&path, &format!("{name}/"), files);
            } else {
                files.insert(name, fs::read_to_string(&path).unwrap());
            }
        }
    }

    #[test]
    fn every_file_of_the_demo_builds_is_carried() {
        let mut there = BTreeMap::new();
        gather(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../demo"), "", &mut there);
        let carried: BTreeMap<String, String> = DEMO_BUILDS
            .iter()
            .flat_map(|build| {
                build.files.iter().map(|(file, text)| (format!("{}/{file}", build.name), *text))
            })
            .map(|(name, text)| (name, text.to_owned()))
            .collect();
        assert_eq!(carried, there);
    }
}
