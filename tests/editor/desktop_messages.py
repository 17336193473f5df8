"""What other programs of the desktop say to a window, by libX11 alone: a file manager that drops a file (the XDND protocol,
version 5, freedesktop.org), and a window manager whose close button is pressed (WM_DELETE_WINDOW, X11's ICCCM 4.2.8.1)."""
import ctypes
import ctypes.util
import pathlib
import time

CLIENT_MESSAGE = 33
SELECTION_REQUEST = 30
SELECTION_NOTIFY = 31
PROP_REPLACE = 0
HANGS_AFTER = 60  # seconds


class ClientMessage(ctypes.Structure):
    _fields_ = [("type", ctypes.c_int), ("serial", ctypes.c_ulong), ("send_event", ctypes.c_int),
                ("display", ctypes.c_void_p), ("window", ctypes.c_ulong), ("message_type", ctypes.c_ulong),
                ("format", ctypes.c_int), ("data", ctypes.c_long * 5)]


class SelectionRequest(ctypes.Structure):
    _fields_ = [("type", ctypes.c_int), ("serial", ctypes.c_ulong), ("send_event", ctypes.c_int),
                ("display", ctypes.c_void_p), ("owner", ctypes.c_ulong), ("requestor", ctypes.c_ulong),
                ("selection", ctypes.c_ulong), ("target", ctypes.c_ulong), ("property", ctypes.c_ulong),
                ("time", ctypes.c_ulong)]


class SelectionNotify(ctypes.Structure):
    _fields_ = [("type", ctypes.c_int), ("serial", ctypes.c_ulong), ("send_event", ctypes.c_int),
                ("display", ctypes.c_void_p), ("requestor", ctypes.c_ulong), ("selection", ctypes.c_ulong),
                ("target", ctypes.c_ulong), ("property", ctypes.c_ulong), ("time", ctypes.c_ulong)]


class Event(ctypes.Union):
    _fields_ = [("type", ctypes.c_int), ("client", ClientMessage), ("request", SelectionRequest),
                ("notify", SelectionNotify), ("room", ctypes.c_long * 24)]


class Client:
    """A program of its own on that display, which speaks to one window."""

    def __init__(self, display_name, target):
        self.x11 = ctypes.CDLL(ctypes.util.find_library("X11"))
        for name in ("XDefaultRootWindow", "XCreateSimpleWindow", "XInternAtom"):
            getattr(self.x11, name).restype = ctypes.c_ulong
        self.x11.XOpenDisplay.restype = ctypes.c_void_p
        self.display = ctypes.c_void_p(self.x11.XOpenDisplay(display_name.encode()))
        self.target = target

    def atom(self, name):
        return self.x11.XInternAtom(self.display, name.encode(), 0)

    def send(self, window, event):
        self.x11.XSendEvent(self.display, ctypes.c_ulong(window), 0, ctypes.c_long(0), ctypes.byref(event))
        self.x11.XFlush(self.display)

    def message(self, name, *data):
        event = Event()
        event.client.type = CLIENT_MESSAGE
        event.client.window = self.target
        event.client.message_type = self.atom(name)
        event.client.format = 32
        for place, value in enumerate(data):
            event.client.data[place] = value
        self.send(self.target, event)

    def close(self):
        self.x11.XCloseDisplay(self.display)


def take_keys_away(display_name):
    """No window has the keys, as while another program is at work."""
    client = Client(display_name, 0)
    client.x11.XSetInputFocus(client.display, ctypes.c_ulong(0), 0, ctypes.c_ulong(0))
    client.close()


def press_close_button(display_name, target):
    client = Client(display_name, target)
    client.message("WM_PROTOCOLS", client.atom("WM_DELETE_WINDOW"), 0)
    client.close()


def drop_file(display_name, target, path):
    """Offers the file, drops it, and stays until the window says that it has it."""
    client = Client(display_name, target)
    x11, display, atom, send, message = client.x11, client.display, client.atom, client.send, client.message
    root = x11.XDefaultRootWindow(display)
    source = x11.XCreateSimpleWindow(display, ctypes.c_ulong(root), 0, 0, 1, 1, 0, ctypes.c_ulong(0), ctypes.c_ulong(0))
    selection = atom("XdndSelection")
    x11.XSetSelectionOwner(display, ctypes.c_ulong(selection), ctypes.c_ulong(source), ctypes.c_ulong(0))
    message("XdndEnter", source, 5 << 24, atom("text/uri-list"), 0, 0)
    message("XdndPosition", source, 0, (200 << 16) | 200, 0, atom("XdndActionCopy"))
    message("XdndDrop", source, 0, 0, 0, 0)
    uris = (pathlib.Path(path).as_uri() + "\r\n").encode()
    end = time.monotonic() + HANGS_AFTER
    while time.monotonic() < end:
        if not x11.XPending(display):
            time.sleep(0.005)
            continue
        event = Event()
        x11.XNextEvent(display, ctypes.byref(event))
        if event.type == SELECTION_REQUEST:
            asked = event.request
            x11.XChangeProperty(display, ctypes.c_ulong(asked.requestor), ctypes.c_ulong(asked.property),
                                ctypes.c_ulong(asked.target), 8, PROP_REPLACE, uris, len(uris))
            answer = Event()
            answer.notify.type = SELECTION_NOTIFY
            answer.notify.requestor = asked.requestor
            answer.notify.selection = asked.selection
            answer.notify.target = asked.target
            answer.notify.property = asked.property
            answer.notify.time = asked.time
            send(asked.requestor, answer)
        elif event.type == CLIENT_MESSAGE and event.client.message_type == atom("XdndFinished"):
            client.close()
            return
    raise AssertionError("the window did not take the file")
