use super::*;
use crate::testing::changed;
use crate::{Selection, read, read_text};

struct Folder(PathBuf);

impl Folder {
    fn new(test: &str) -> Self {
        let path = std::env::temp_dir().join(format!("heapcast-files-{test}-{}", std::process::id()));
        fs::create_dir_all(path.join("job/times")).unwrap();
        Self(path)
    }

    /// What is said of a job whose loading times stand in a file.
    fn said(&self, file: &str, column: &str) -> Result<(), String> {
        let heaped = "heaped = \"14 ft3\"";
        let law = format!("{{ family = \"observed\", file = '{file}', column = '{column}', unit = \"s\" }}");
        let text = changed(&[(heaped, &format!("{heaped}\nloading = {law}"))]);
        let read = read_text(&text, "job.toml", &self.0.join("job"), &Selection::default());
        read.map(drop).map_err(|refusal| refusal.to_string())
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

const LIST: &str = "loading\n20\n25\n30\n";

#[test]
fn observed_values_come_from_beside_the_scenario_or_below_it() {
    let folder = Folder::new("below");
    for place in ["job/a.csv", "job/times/b.csv", "outside.csv"] {
        fs::write(folder.0.join(place), LIST).unwrap();
    }
    for name in ["a.csv", "./a.csv", "times/b.csv", "times/../a.csv"] {
        assert_eq!(folder.said(name, "loading"), Ok(()), "{name}");
    }
    let whole = folder.0.join("job/a.csv").display().to_string();
    for name in ["../outside.csv", "times/../../outside.csv", "../job/a.csv", "../no_such.csv", &whole] {
        let said = folder.said(name, "loading").unwrap_err();
        assert!(said.contains("outside the folder of the scenario"), "{name}: {said}");
    }
}

#[cfg(unix)]
#[test]
fn links_are_followed_and_may_not_lead_out() {
    use std::os::unix::fs::symlink;
    let folder = Folder::new("links");
    fs::write(folder.0.join("outside.csv"), LIST).unwrap();
    fs::write(folder.0.join("job/times/b.csv"), LIST).unwrap();
    for (to, link) in [
        (folder.0.join("outside.csv"), "out.csv"),
        (folder.0.join("job/times/b.csv"), "in.csv"),
        (folder.0.clone(), "up"),
        (folder.0.join("gone.csv"), "broken.csv"),
        (folder.0.join("job/round.csv"), "round.csv"),
    ] {
        symlink(to, folder.0.join("job").join(link)).unwrap();
    }
    assert_eq!(folder.said("in.csv", "loading"), Ok(()));
    for name in ["out.csv", "up/outside.csv"] {
        assert!(folder.said(name, "loading").unwrap_err().contains("outside the folder"), "{name}");
    }
    for name in ["broken.csv", "round.csv"] {
        assert!(
            folder.said(name, "loading").unwrap_err().contains("a link to a file that is not there"),
            "{name}"
        );
    }
    symlink("gone.toml", folder.0.join("job.toml")).unwrap();
    let said = read(&folder.0.join("job.toml"), &Selection::default()).unwrap_err().to_string();
    assert!(said.contains("a link to a file that is not there; put the file there again"), "{said}");
}

/// Files of every shape that keep something to themselves: none of it is ever told, whatever column is asked for.
#[test]
fn nothing_is_told_of_a_file_that_is_no_list_of_figures() {
    let folder = Folder::new("secret");
    let secret = "hunter2";
    for (name, text) in [
        ("key.txt", "-----BEGIN KEY-----\n8hunter2AAAB\nhunter2+x9\n-----END KEY-----\n"),
        ("settings.ini", "token=hunter2\nother=9hunter2\n"),
        ("people.csv", "name,note\nann,hunter2\nbob,3 hunter2 s\n"),
        ("headless.csv", "9hunter2\n20\n30\n"),
        ("crooked.csv", "a,b\nhunter2\nc,d,hunter2\n"),
    ] {
        fs::write(folder.0.join("job").join(name), text).unwrap();
        let first = text.lines().next().unwrap();
        for column in ["loading", "note", "name", "a", first.split(',').next().unwrap()] {
            if column.contains(secret) {
                continue;
            }
            let said = folder.said(name, column).unwrap_err();
            let told = said.replace(column, "");
            assert!(
                !told.contains(secret) && !told.contains("BEGIN") && !told.contains("token"),
                "{name} {column}: {said}"
            );
        }
    }
    // A list of figures with one that is none is told of, or nobody could put it right.
    fs::write(folder.0.join("job/list.csv"), "loading\n20\nlong\n30\n").unwrap();
    assert!(folder.said("list.csv", "loading").unwrap_err().contains("line 3, \"long\""));
}

#[test]
fn two_equal_headings_are_refused() {
    let folder = Folder::new("twice");
    fs::write(folder.0.join("job/a.csv"), "loading,loading\n1,2\n").unwrap();
    assert!(folder.said("a.csv", "loading").unwrap_err().contains("two columns of this name"));
}

#[test]
fn a_file_that_is_too_large_is_refused_with_the_limit() {
    let folder = Folder::new("large");
    fs::write(folder.0.join("job/a.csv"), LIST.repeat(400_000)).unwrap();
    let said = folder.said("a.csv", "loading").unwrap_err();
    assert!(said.contains("larger than 4 MB, the most that is read; keep the column"), "{said}");
}

#[cfg(unix)]
#[test]
fn devices_pipes_and_sockets_are_refused_without_waiting_for_them() {
    let folder = Folder::new("special");
    let socket = folder.0.join("job/socket.csv");
    let _socket = std::os::unix::net::UnixListener::bind(&socket).unwrap();
    assert!(folder.said("socket.csv", "loading").unwrap_err().contains("not a plain file"));
    let pipe = folder.0.join("job/pipe.csv");
    let made = std::process::Command::new("mkfifo").arg(&pipe).status().is_ok_and(|status| status.success());
    if made {
        assert!(folder.said("pipe.csv", "loading").unwrap_err().contains("not a plain file"));
    }
    for path in [
        socket.as_path(),
        &pipe,
        Path::new("/dev/zero"),
        Path::new("/dev/null"),
        Path::new("/proc/self/environ"),
    ] {
        if path.exists() {
            let said = read(path, &Selection::default()).unwrap_err().to_string();
            assert!(said.contains("this is not a plain file; name a scenario file"), "{said}");
        }
    }
}
