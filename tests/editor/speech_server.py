"""A speech server of the tests' own, to which the real spd-say speaks: SSIP, as Speech Dispatcher's own manual
('SSIP Documentation', chapters 'SSIP Commands' and 'Client Programming') has it. It says nothing aloud and notes what it is asked."""

import socket
import threading


class SpeechServer:
    """Listens at `path`; `said` holds what was to be spoken, `set_to` the settings, `cancelled` how often it was
    told to stop."""

    def __init__(self, path):
        self.said = []
        self.set_to = {}
        self.cancelled = 0
        self._socket = socket.socket(socket.AF_UNIX, socket.SOCK_STREAM)
        self._socket.bind(str(path))
        self._socket.listen()
        self.address = f"unix_socket:{path}"
        threading.Thread(target=self._serve, daemon=True).start()

    def close(self):
        self._socket.close()

    def _serve(self):
        while True:
            try:
                client, _ = self._socket.accept()
            except OSError:
                return
            threading.Thread(target=self._talk, args=(client,), daemon=True).start()

    def _talk(self, client):
        stream = client.makefile("rwb")

        def answer(*lines):
            stream.write("".join(f"{line}\r\n" for line in lines).encode())
            stream.flush()

        for line in stream:
            words = line.decode().rstrip("\r\n").split(" ")
            command = words[0].upper()
            if command == "SET":
                self.set_to[words[2].upper()] = " ".join(words[3:])
                answer("200 OK SET")
            elif command == "SPEAK":
                answer("230 OK RECEIVING DATA")
                text = []
                for spoken in stream:
                    spoken = spoken.decode().rstrip("\r\n")
                    if spoken == ".":
                        break
                    text.append(spoken)
                self.said.append("\n".join(text))
                answer("225-1", "225 OK MESSAGE QUEUED")
                answer("701-1", "701-1", "701 BEGIN", "702-1", "702-1", "702 END")
            elif command in ("CANCEL", "STOP"):
                self.cancelled += 1
                answer("210 OK CANCELED")
            elif command == "HISTORY":
                answer("245-1", "245 OK CLIENT ID SENT")
            elif command == "QUIT":
                answer("231 HAPPY HACKING")
                break
            else:
                answer("200 OK")
        client.close()
