"""The running record of a build: refuses what is not its own, and survives being cut off."""

import pytest

from bowlcore.rack.job_log import JobLog, JobResult, to_line


def test_a_record_of_other_settings_is_refused(tmp_path):
    JobLog(tmp_path / "jobs.csv", "seed=1")
    with pytest.raises(ValueError, match="other settings"):
        JobLog(tmp_path / "jobs.csv", "seed=2")


def test_a_line_that_does_not_add_up_is_refused(tmp_path):
    log = JobLog(tmp_path / "jobs.csv", "seed=1")
    log.path.write_text(log.path.read_text() + to_line(JobResult("a", 0, 3, {0: 2}, (), ())))
    with pytest.raises(ValueError, match="add up"):
        log.read()


def test_a_torn_line_is_forgotten_and_the_next_one_is_whole(tmp_path):
    log = JobLog(tmp_path / "jobs.csv", "seed=1")
    one, two = (JobResult(name, 0, 2, {0: 1, 512: 1}, (19.0, 18.5), (-1.0,)) for name in "ab")
    log.add(one)
    with log.path.open("a") as file:
        file.write(to_line(two)[:9])
    again = JobLog(tmp_path / "jobs.csv", "seed=1")
    assert again.read() == {("a", 0): one}
    again.add(two)
    assert again.read() == {("a", 0): one, ("b", 0): two}
