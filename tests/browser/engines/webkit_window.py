"""A bare WebKitGTK window for tests: one web view, a data folder that lasts, and automation allowed.

    python webkit_window.py PATH_OF_MINIBROWSER FOLDER WIDTH HEIGHT

Speaks to the installed library through ctypes, so it needs no package beyond the one that brings the library. The
path only says which version of the library is installed.
"""

from __future__ import annotations

import ctypes
import re
import sys
from ctypes import CFUNCTYPE, c_char_p, c_int, c_void_p

SONAMES = {"4.1": "libwebkit2gtk-4.1.so.0", "4.0": "libwebkit2gtk-4.0.so.37"}

browser, folder, width, height = sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
found = re.search(r"webkit2gtk-(4\.\d)", browser)
if not found or found[1] not in SONAMES:
    raise SystemExit(f"no known WebKitGTK library belongs to {browser}")
gtk = ctypes.CDLL("libgtk-3.so.0")
gdk = ctypes.CDLL("libgdk-3.so.0")
gobject = ctypes.CDLL("libgobject-2.0.so.0")
webkit = ctypes.CDLL(SONAMES[found[1]])
for library, names in ((gtk, ("gtk_window_new", "gtk_widget_get_window")), (gobject, ("g_object_new",)), (webkit, (
        "webkit_website_data_manager_new", "webkit_web_context_new_with_website_data_manager", "webkit_application_info_new",
        "webkit_web_context_get_website_data_manager"))):
    for name in names:
        getattr(library, name).restype = c_void_p
gobject.g_signal_connect_data.argtypes = [c_void_p, c_char_p, c_void_p, c_void_p, c_void_p, c_int]
webkit.webkit_web_view_get_type.restype = ctypes.c_size_t

gtk.gtk_init(None, None)
manager = c_void_p(webkit.webkit_website_data_manager_new(
    b"base-data-directory", f"{folder}/data".encode(), b"base-cache-directory", f"{folder}/cache".encode(), None))
context = c_void_p(webkit.webkit_web_context_new_with_website_data_manager(manager))
webkit.webkit_web_context_set_automation_allowed(context, 1)


@CFUNCTYPE(None, c_void_p, c_void_p)
def window_closed(window: int, data: int) -> None:
    """The last window ends the program."""
    gtk.gtk_main_quit()


@CFUNCTYPE(c_void_p, c_void_p, c_void_p)
def make_view(session: int, data: int) -> int:
    """The driver asks for a page: a window of the wanted size with nothing but a web view in it."""
    view = c_void_p(gobject.g_object_new(ctypes.c_size_t(webkit.webkit_web_view_get_type()), b"web-context", context,
                                         b"is-controlled-by-automation", c_int(1), None))
    window = c_void_p(gtk.gtk_window_new(0))
    gtk.gtk_window_set_default_size(window, width, height)
    gtk.gtk_container_add(window, view)
    gobject.g_signal_connect_data(window, b"destroy", window_closed, None, None, 0)
    gtk.gtk_widget_show_all(window)
    gtk.gtk_widget_grab_focus(view)
    gdk.gdk_window_focus(c_void_p(gtk.gtk_widget_get_window(window)), 0)  # no window manager is there to do it
    return view.value or 0


@CFUNCTYPE(None, c_void_p, c_void_p, c_void_p)
def automation_started(context: int, session: int, data: int) -> None:
    """Tell the driver who we are and give it windows when it asks."""
    info = c_void_p(webkit.webkit_application_info_new())
    webkit.webkit_application_info_set_name(info, b"MiniBrowser")
    webkit.webkit_automation_session_set_application_info(c_void_p(session), info)
    gobject.g_signal_connect_data(c_void_p(session), b"create-web-view", make_view, None, None, 0)


gobject.g_signal_connect_data(context, b"automation-started", automation_started, None, None, 0)
gtk.gtk_main()
