//! The command line.

use crate::build::{BuildOptions, build};
use crate::failure::{Failure, Result};
use crate::process::run_shown;
use crate::server::{Server, ServerOptions};
use crate::steps::Steps;
use crate::target::Target;
use crate::toolchain::Toolchain;
use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

pub(crate) const USAGE: &str = "\
tinwave                     build the page and serve it on this machine
tinwave build               build the page into dist/
tinwave serve               serve what was built
tinwave cargo ARGUMENTS     run cargo with a compiler that has the target which
                            the arguments name by --target

  --out FOLDER              build into this folder, or serve it (default: dist)
  --version-tag TEXT        set this build's version apart from another's
  --no-opt                  do not run the optimiser: quicker, heavier
  --port NUMBER             serve on this port (default: 8713 or the next free one)
  --prefix /PATH/           serve below this path (default: /)
With cargo run, put -- before them: cargo run -- build";

/// Which of the program's jobs to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Job {
    BuildAndServe,
    Build,
    Serve,
    Help,
}

#[derive(Debug, PartialEq, Eq)]
struct Arguments {
    job: Job,
    build: BuildOptions,
    port: Option<u16>,
    prefix: String,
}

/// Runs the program with the words of its command line, without its own name.
pub fn run(words: impl Iterator<Item = String>) -> ExitCode {
    let words: Vec<String> = words.collect();
    let done = match words.split_first() {
        Some((first, rest)) if first == "cargo" => cargo(rest),
        _ => parse(words.into_iter()).and_then(|arguments| obey(&arguments)),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            let _ = writeln!(std::io::stderr(), "tinwave: {failure}");
            ExitCode::FAILURE
        }
    }
}

fn parse(mut words: impl Iterator<Item = String>) -> Result<Arguments> {
    let mut arguments = Arguments {
        job: Job::BuildAndServe,
        build: BuildOptions::default(),
        port: None,
        prefix: "/".to_owned(),
    };
    let mut first = true;
    while let Some(word) = words.next() {
        let mut value = || {
            let missing = || Failure::Usage(format!("{word} needs a value"));
            words.next().ok_or_else(missing)
        };
        match word.as_str() {
            "build" if first => arguments.job = Job::Build,
            "serve" if first => arguments.job = Job::Serve,
            "help" | "--help" | "-h" => arguments.job = Job::Help,
            "--no-opt" => arguments.build.optimise = false,
            "--out" => arguments.build.out = PathBuf::from(value()?),
            "--version-tag" => arguments.build.version_tag = value()?,
            "--prefix" => arguments.prefix = value()?,
            "--port" => {
                let text = value()?;
                let port = text.parse();
                let wrong = |_| Failure::Usage(format!("--port {text}: not from 0 to 65535"));
                arguments.port = Some(port.map_err(wrong)?);
            }
            other => return Err(Failure::Usage(format!("what is \"{other}\"?"))),
        }
        first = false;
    }
    Ok(arguments)
}

fn obey(arguments: &Arguments) -> Result<()> {
    let steps = Steps::new();
    match arguments.job {
        Job::Help => say(USAGE),
        Job::Build => build(&arguments.build, &steps)?.check(),
        Job::Serve => serve(arguments),
        Job::BuildAndServe => {
            // Fit to be looked at, though perhaps not to be published.
            if let Err(heavy) = build(&arguments.build, &steps)?.check() {
                steps.say(&heavy.to_string());
            }
            serve(arguments)
        }
    }
}

fn serve(arguments: &Arguments) -> Result<()> {
    let folder = arguments.build.out.clone();
    if !folder.join("index.html").is_file() {
        return Err(Failure::Missing {
            what: format!("{} holds no page", folder.display()),
            remedy: "run `cargo run -- build` first".to_owned(),
        });
    }
    let server = Server::bind(&ServerOptions {
        folder,
        port: arguments.port,
        prefix: arguments.prefix.clone(),
    })?;
    say(&format!("Tinwave is at {}", server.address()))?;
    say("Ctrl+C stops it.")?;
    server.run();
    Ok(())
}

/// Runs cargo for a target that the active toolchain may lack: for checks of
/// what the page, or a bare machine, is compiled from.
fn cargo(words: &[String]) -> Result<()> {
    let named = words.iter().skip_while(|word| *word != "--target").nth(1);
    let named = named.map_or("no --target", String::as_str);
    let known = Target::ALL.into_iter().find(|t| t.triple() == named);
    let target = known.ok_or_else(|| {
        let targets = Target::ALL.map(Target::triple).join(" or ");
        Failure::Usage(format!("{named}: cargo needs --target {targets}"))
    })?;
    let toolchain = Toolchain::find(target, &Steps::new())?;
    run_shown(toolchain.cargo().args(words))
}

fn say(text: &str) -> Result<()> {
    let mut out = std::io::stdout();
    // Nobody listens any more: go on serving.
    let _ = writeln!(out, "{text}").and_then(|()| out.flush());
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parsed(line: &str) -> Result<Arguments> {
        parse(line.split_whitespace().map(str::to_owned))
    }

    #[test]
    fn no_words_build_and_serve() {
        let arguments = parsed("").ok();
        assert_eq!(arguments.as_ref().map(|a| a.job), Some(Job::BuildAndServe));
        assert_eq!(arguments.map(|a| a.build.optimise), Some(true));
    }

    #[test]
    fn words_and_options_are_read() {
        let arguments = parsed("serve --port 9000 --prefix /a/b/ --out x").ok();
        let Some(arguments) = arguments else {
            unreachable!("a good line was refused");
        };
        assert_eq!(arguments.job, Job::Serve);
        assert_eq!(arguments.port, Some(9000));
        assert_eq!(arguments.prefix, "/a/b/");
        assert_eq!(arguments.build.out, PathBuf::from("x"));
    }

    #[test]
    fn bad_lines_are_refused() {
        for line in ["bulid", "--port", "--port 70000", "build serve"] {
            assert!(parsed(line).is_err(), "{line:?} was taken");
        }
    }
}
