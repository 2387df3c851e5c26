"""The Jupyter server of a BinderHub shows the worksheets as the command `yarnsheets` does."""

from yarnsheets.serve.settings import add_share_folder, settings
from yarnsheets.serve.worksheets import worksheets_folder

add_share_folder()
c.merge(settings())  # noqa: F821  # Jupyter provides `c`
c.ServerApp.root_dir = str(worksheets_folder())  # noqa: F821
