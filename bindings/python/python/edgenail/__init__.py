"""Plans the structural sheathing of wood-frame walls.

>>> import edgenail
>>> plan = edgenail.plan(edgenail.demo_house())  # doctest: +SKIP

A plan is no substitute for the local building code and licensed practice: check it before you build.
"""

import warnings

from edgenail._edgenail import DEBUG, __version__
from edgenail.batch import Batch, Figures, Outcome, plan_batch
from edgenail.capacity import Capacity, Derivation, Input, Step, capacity
from edgenail.changes import Change, WhatIf
from edgenail.columns import CapacityColumns, capacity_columns
from edgenail.errors import EdgenailError, InputError, InternalError, Issue, NoLayoutError, Unmet
from edgenail.house import House
from edgenail.lengths import Length, Shown
from edgenail.plan import Plan, demo_house, generated_house, plan
from edgenail.question import Question
from edgenail.schedule import Design, WallSchedule
from edgenail.street import Street, street
from edgenail.table import Column, Table

__all__ = [
    "Batch",
    "Capacity",
    "CapacityColumns",
    "Change",
    "Column",
    "Derivation",
    "Design",
    "EdgenailError",
    "Figures",
    "House",
    "Input",
    "InputError",
    "InternalError",
    "Issue",
    "Length",
    "NoLayoutError",
    "Outcome",
    "Plan",
    "Question",
    "Shown",
    "Step",
    "Street",
    "Table",
    "Unmet",
    "WallSchedule",
    "WhatIf",
    "__version__",
    "capacity",
    "capacity_columns",
    "demo_house",
    "generated_house",
    "plan",
    "plan_batch",
    "street",
]

if DEBUG:
    warnings.warn("edgenail was built without optimisation and is slow: do not measure it", stacklevel=2)
