"""JupyterHub for a class: each learner has a server, a Python and a work folder of one's own. Tried by test_hub.py.

As it stands it is for trying out on one computer: anyone may log in under any name. A school puts its own
`authenticator_class` and a spawner that keeps learners apart (system users or containers) in the two marked places.
"""

import os
import sys
from pathlib import Path

from bowlcore import serve, work_folder

c = get_config()  # noqa: F821  JupyterHub gives it
ROOT = Path(os.environ["BOWLCORE_HUB_ROOT"])  # a folder for each learner will lie here
PORT = int(os.environ.get("BOWLCORE_HUB_PORT", "8000"))

c.JupyterHub.bind_url = f"http://127.0.0.1:{PORT}"
c.JupyterHub.hub_port = PORT + 1
c.ConfigurableHTTPProxy.api_url = f"http://127.0.0.1:{PORT + 2}"
c.ConfigurableHTTPProxy.command = [os.environ.get("BOWLCORE_HUB_PROXY", "configurable-http-proxy")]
c.JupyterHub.db_url = f"sqlite:///{ROOT / 'hub.sqlite'}"
c.JupyterHub.cookie_secret_file = str(ROOT / "cookie_secret")
c.JupyterHub.authenticator_class = "dummy"  # <- the school's own
c.Authenticator.allow_all = True
c.JupyterHub.spawner_class = "simple"  # <- one that keeps learners apart

c.SimpleLocalProcessSpawner.home_dir_template = str(ROOT / "{username}")
c.Spawner.cmd = [sys.executable, "-m", "jupyterhub.singleuser"]
c.Spawner.default_url = "/doc/tree/00_start_here.ipynb"
c.Spawner.args = ["--allow-root"] if hasattr(os, "geteuid") and os.geteuid() == 0 else []
c.Spawner.args += [f"--MappingKernelManager.{name}={value}" for name, value in serve.CULLING.items()]
# The lessons' settings reach the learner's server in its environment, as they do after `bowlcore open`.
c.Spawner.environment = {
    name: value
    for name, value in serve.environment(token="", temporary=ROOT).items()
    if name in ("JUPYTER_PATH", "JUPYTER_CONFIG_PATH")
}


def fill(spawner):
    """The lessons of this version in the learner's folder; a changed one stays."""
    folder = ROOT / spawner.user.name / work_folder.NAME
    folder.parent.mkdir(exist_ok=True)
    work_folder.fill(folder)
    spawner.notebook_dir = str(folder)


c.Spawner.pre_spawn_hook = fill
