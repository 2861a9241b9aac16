"""Functions for the cells of LibreOffice Calc: every function of the library that takes and gives plain values.

A cell that gets something wrong shows an error value; with TRUE as one more argument the function gives the message
instead, empty where all is well.
"""

import os
import sys

import unohelper
from com.sun.star.lang import IllegalArgumentException, XServiceInfo
from edgenail import XCells

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
from edgenail_calls import Library, Refused, method_name, results  # noqa: E402

NAME = "edgenail.Cells"
SERVICES = (NAME, "com.sun.star.sheet.AddIn")
LIBRARY = Library()


class Cells(unohelper.Base, XCells, XServiceInfo):
    """The add-in; its functions are added below, as the library has them."""

    def __init__(self, context):
        pass

    def getImplementationName(self):
        return NAME

    def supportsService(self, name):
        return name in SERVICES

    def getSupportedServiceNames(self):
        return SERVICES


def _method(function, several):
    def method(self, *arguments):
        *inputs, as_message = arguments
        try:
            results = LIBRARY.call(function, *inputs)
        except (Refused, TypeError) as fault:
            if not as_message:
                raise IllegalArgumentException(str(fault), self, 0) from None
            results = [str(fault)]
        else:
            results = [""] if as_message else results
        # A cell holds doubles and text.
        cells = tuple(result if isinstance(result, str) else float(result) for result in results)
        return (cells,) if several else cells[0]

    return method


for _name, _function in LIBRARY.functions.items():
    if _function["cell"]:
        setattr(Cells, method_name(_name), _method(_name, results(_function) > 1))

g_ImplementationHelper = unohelper.ImplementationHelper()
g_ImplementationHelper.addImplementation(Cells, NAME, SERVICES)
