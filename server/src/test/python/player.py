"""A player written from protocol/README.md alone, with Python's standard library.

Joins a room, syncs its clock, plays its part once, is cut in the middle of the take, comes back,
sends again what was not acknowledged, and prints its review. Usage: player.py PORT WORD NAME
"""
import base64
import json
import os
import random
import socket
import struct
import sys
import time


class Line:
    """A WebSocket (RFC 6455) with only what the wire needs: text, ping, close."""

    def __init__(self, port):
        self.socket = socket.create_connection(("127.0.0.1", port), timeout=20)
        self.socket.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        self.buffer = b""
        key = base64.b64encode(os.urandom(16)).decode()
        self.socket.sendall((
            "GET /room HTTP/1.1\r\nHost: 127.0.0.1\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n"
            f"Sec-WebSocket-Key: {key}\r\nSec-WebSocket-Version: 13\r\n\r\n").encode())
        while b"\r\n\r\n" not in self.buffer:
            self.fill()
        head, self.buffer = self.buffer.split(b"\r\n\r\n", 1)
        assert b" 101 " in head.split(b"\r\n")[0], head

    def fill(self):
        more = self.socket.recv(65536)
        if not more:
            raise ConnectionError("the host has gone")
        self.buffer += more

    def take(self, count):
        while len(self.buffer) < count:
            self.fill()
        taken, self.buffer = self.buffer[:count], self.buffer[count:]
        return taken

    def frame(self, opcode, payload):
        mask = os.urandom(4)
        size = len(payload)
        head = bytes([0x80 | opcode])
        head += bytes([0x80 | size]) if size < 126 else bytes([0xFE]) + struct.pack(">H", size)
        self.socket.sendall(head + mask + bytes(b ^ mask[i % 4] for i, b in enumerate(payload)))

    def send(self, **message):
        self.frame(1, json.dumps(message).encode())

    def receive(self):
        while True:
            first, second = self.take(2)
            size = second & 0x7F
            if size == 126:
                size = struct.unpack(">H", self.take(2))[0]
            elif size == 127:
                size = struct.unpack(">Q", self.take(8))[0]
            payload = self.take(size)
            if first & 0x0F == 1:
                return json.loads(payload)
            if first & 0x0F == 9:
                self.frame(10, payload)
            elif first & 0x0F == 8:
                raise ConnectionError(f"closed {struct.unpack('>H', payload[:2])[0]}")


def own_micros():
    return time.monotonic_ns() // 1000


class Player:
    def __init__(self, port, word, name):
        self.port, self.word, self.name = port, word, name
        self.token = None
        self.dealt = self.announced = None
        self.attacks, self.stored = [], 0
        self.forward, self.backward = [], []

    def come_in(self):
        self.line = Line(self.port)
        join = dict(type="join", versionMin=1, versionMax=1, room=self.word, name=self.name,
                    role="player")
        if self.token:
            join["token"] = self.token
        self.line.send(**join)
        self.welcome = self.wait("welcome")
        self.token = self.welcome["token"]
        room = self.wait("room")
        self.stored = room["throughSeq"]
        return room

    def wait(self, kind):
        while True:
            message = self.line.receive()
            self.note(message)
            if message["type"] == kind:
                return message

    def note(self, message):
        if message["type"] == "stored":
            assert message["throughSeq"] >= self.stored, "an acknowledgement fell"
            self.stored = message["throughSeq"]
        elif message["type"] in ("dealt", "announced"):
            setattr(self, message["type"], message)
        elif message["type"] == "error":
            print("error", message, file=sys.stderr)

    def sync(self):
        for i in range(20):
            self.line.send(type="clock", id=i, t1Micros=own_micros())
            answer = self.wait("clockAnswer")
            t4 = own_micros()
            self.forward.append(answer["t2Micros"] - answer["t1Micros"])
            self.backward.append(t4 - answer["t3Micros"])
        low, high = -min(self.backward), min(self.forward)
        self.offset = (low + high) // 2  # room time minus own time
        self.line.send(type="clockReport", epoch=self.welcome["epoch"], state="steady",
                       uncertaintyMicros=(high - low) // 2, spreadMicros=0, skewPpm=0.0)

    def play(self):
        own = next(p for p in self.dealt["parts"] if p["player"] == self.dealt["own"])
        step = 60_000_000 / (self.dealt["tempo"] * self.dealt["stepsPerBeat"])
        start = self.announced["startMicros"]
        cut_after = len(own["attackSteps"]) // 2
        for number, at_step in enumerate(own["attackSteps"], 1):
            due = start + round(at_step * step) + random.Random(number).randint(-9000, 9000)
            time.sleep(max(0, due - own_micros() - self.offset) / 1e6)
            self.attacks.append({"micros": own_micros() + self.offset})
            if number == cut_after:
                self.line.socket.close()  # cut; the playing goes on
                self.line = None
            elif self.line:
                self.send_from(len(self.attacks))
            elif number == cut_after + 2:
                self.come_in()
                self.send_from(self.stored + 1)

    def send_from(self, first):
        while first <= len(self.attacks):
            some = self.attacks[first - 1:first + 63]
            self.line.send(type="attacks", takeId=self.announced["takeId"],
                           epoch=self.announced["epoch"], firstSeq=first, attacks=some)
            first += len(some)

    def rehearse(self):
        self.come_in()
        self.sync()
        while not self.dealt:
            self.wait("dealt")
        self.line.send(type="ready", dealId=self.dealt["dealId"], ready=True)
        while not self.announced:
            self.wait("announced")
        self.play()
        self.wait("stopped")
        self.send_from(1)  # all of it again: sending twice does no harm
        while self.stored < len(self.attacks):
            self.wait("stored")
        self.line.send(type="playedThrough", takeId=self.announced["takeId"],
                       lastSeq=len(self.attacks))
        review = self.wait("review")
        while review["provisional"]:
            review = self.wait("review")
        print(json.dumps({"sent": [a["micros"] for a in self.attacks], "review": review["review"]}))


if __name__ == "__main__":
    Player(int(sys.argv[1]), sys.argv[2], sys.argv[3]).rehearse()
