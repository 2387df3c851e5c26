"""Is my grist drifting?"""

from yarnsheets.sheets.is_my_grist_drifting.sheet import IsMyGristDrifting

__all__ = ["IsMyGristDrifting"]
