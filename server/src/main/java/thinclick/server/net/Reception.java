package thinclick.server.net;

import io.netty.channel.ChannelHandlerContext;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.server.room.RoomDirectory.Place;
import thinclick.server.room.RoomEvent;
import thinclick.server.room.RoomWord;

/**
 * Somebody on one line who is in no room yet: the first message, the way to the event loop of the
 * room it asks for, and that room's answer. On the channel's loop, which is the strangers' own
 * until a room is found.
 */
@SuppressWarnings("FutureReturnValueIgnored") // what goes wrong comes to the listener itself
final class Reception {
  /** A first message must have come by then. */
  static final long FIRST_MESSAGE_MILLIS = 5_000;

  /** Whoever was refused by a room may try again for so long. */
  private static final long ANOTHER_MILLIS = 6 * FIRST_MESSAGE_MILLIS;

  /** Where a room is entered too often, whoever belongs there has their turn soon. */
  private static final long COME_AGAIN_MILLIS = 2_000;

  private static final Logger LOG = LoggerFactory.getLogger(Reception.class);

  private final HostParts parts;
  private final Rooms rooms;
  private final Strangers strangers;
  private final DoorRation ration;
  private final Connection connection;
  private final Hold hold;
  private @Nullable Deadline waiting;
  private @Nullable Entry entry;

  /** Who asks for which room. */
  private record Entry(HostedRoom room, ClientMessage message) {}

  Reception(
      HostParts parts,
      Rooms rooms,
      Strangers strangers,
      DoorRation ration,
      Connection connection,
      Hold hold) {
    this.parts = parts;
    this.rooms = rooms;
    this.strangers = strangers;
    this.ration = ration;
    this.connection = connection;
    this.hold = hold;
  }

  /** The conversation has been granted. */
  void begin(ChannelHandlerContext context) {
    await(context, FIRST_MESSAGE_MILLIS);
  }

  private void await(ChannelHandlerContext context, long millis) {
    stopWaiting();
    waiting = Deadline.in(context.executor(), millis, this::firstMessageDue);
  }

  private void firstMessageDue() {
    if (!connection.joined() && !hold.on()) {
      connection.close(CloseCode.TIMEOUT, "expected join or openRoom within 5 s", null);
    }
  }

  private void stopWaiting() {
    Deadline before = waiting;
    if (before != null) {
      before.cancel();
      waiting = null;
    }
  }

  /** A message of somebody who is in no room. */
  void hear(ChannelHandlerContext context, ClientMessage message) {
    if (message instanceof ClientMessage.OpenRoom open) {
      if (speaks(open.versionMin(), open.versionMax())) {
        open(context, open);
      }
    } else if (message instanceof ClientMessage.Join join) {
      if (speaks(join.versionMin(), join.versionMax())) {
        join(context, join);
      }
    } else {
      connection.close(CloseCode.MALFORMED, "expected join or openRoom first", null);
    }
  }

  private boolean speaks(int min, int max) {
    if (min <= MessageCodec.VERSION && max >= MessageCodec.VERSION) {
      return true;
    }
    connection.close(
        CloseCode.VERSION,
        "expected a range with version " + MessageCodec.VERSION + ", found " + min + " to " + max,
        null);
    return false;
  }

  private void open(ChannelHandlerContext context, ClientMessage.OpenRoom open) {
    if (!rooms.mayBeMadeBy(Remote.of(context), open.hostKey())) {
      connection.close(
          CloseCode.TOKEN, "expected the host key, which the operator gave it (--host-key)", null);
      return;
    }
    if (!strangers.mayMakeRoom(Remote.of(context), parts.clock().nanos())) {
      connection.close(CloseCode.FLOOD, "expected at most 3 new rooms a minute", 60_000L);
      return;
    }
    if (rooms.draining()) {
      connection.close(CloseCode.OVERLOAD, "the host takes no new rooms: it is going", 60_000L);
      return;
    }
    if (rooms.full()) {
      connection.close(CloseCode.OVERLOAD, "the host has " + Rooms.MOST + " rooms", null);
      return;
    }
    hold.begin(context);
    rooms
        .make()
        .whenCompleteAsync(
            (room, problem) -> {
              if (problem != null) {
                LOG.error("no room could be made", problem);
                connection.close(CloseCode.FAULT, CloseCode.FAULT.says(), null);
              } else {
                enter(context, new Entry(room, open));
              }
            },
            context.executor());
  }

  private void join(ChannelHandlerContext context, ClientMessage.Join join) {
    if (!strangers.mayTryWord(Remote.of(context), parts.clock().nanos())) {
      connection.close(CloseCode.FLOOD, "expected at most 20 wrong words a minute", 60_000L);
      return;
    }
    hold.begin(context);
    CompletableFuture<Place<HostedRoom>> place = rooms.find(RoomWord.normal(join.room()));
    if (place.isDone()) {
      found(
          context, place.join(), join); // before the next is read: a wrong word is counted at once
    } else {
      place.whenCompleteAsync((where, problem) -> found(context, where, join), context.executor());
    }
  }

  private void found(
      ChannelHandlerContext context, @Nullable Place<HostedRoom> place, ClientMessage.Join join) {
    if (place instanceof Place.Here<HostedRoom> here) {
      enter(context, new Entry(here.room(), join));
    } else if (place instanceof Place.Nowhere<HostedRoom> && rooms.draining()) {
      // Its room may have been here a moment ago, and will be again when the host is back.
      connection.close(CloseCode.GOING, CloseCode.GOING.says(), 1_000L);
    } else if (place instanceof Place.Nowhere<HostedRoom>) {
      strangers.wordWasWrong(Remote.of(context), parts.clock().nanos());
      connection.close(CloseCode.ROOM, CloseCode.ROOM.says(), null);
    } else {
      connection.close(CloseCode.OVERLOAD, "the room cannot be reached now", 1_000L);
    }
  }

  // ------------------------------------------------------------------ the way in

  private void enter(ChannelHandlerContext context, Entry asked) {
    HostedRoom before = connection.room();
    if (before != null && before != asked.room()) {
      before.left(connection); // refused there before
      connection.room(null);
    }
    if (!context.channel().isActive()) {
      return;
    }
    Comings.Answer answer =
        before == null
            ? asked.room().mayBeEntered(asked.message())
            : Comings.Answer.AS_A_STRANGER; // that coming was counted already
    if (answer == Comings.Answer.WAIT) {
      connection.close(
          CloseCode.FLOOD,
          "expected fewer comings: 2 a second into a room, 1 in 2 s of a member",
          COME_AGAIN_MILLIS);
      return;
    }
    if (asked.room().loop() == context.channel().eventLoop()) {
      come(context, asked);
    } else {
      if (answer == Comings.Answer.WELCOME) {
        ration.letIn();
      }
      connection.flush();
      entry = asked;
      rooms.moving(true);
      LoopChange.begin(context.channel(), asked.room().loop(), () -> rooms.moving(false));
    }
  }

  /** The line leaves the loop it was on. */
  void leave() {
    stopWaiting();
  }

  /** The line has come to a loop: where it was on its way to a room, it is there. */
  void arrive(ChannelHandlerContext context) {
    Entry asked = entry;
    if (asked != null) {
      entry = null;
      context.flush(); // what the network had not taken waits for nobody else
      come(context, asked);
      rooms.moving(false);
    }
  }

  private void come(ChannelHandlerContext context, Entry asked) {
    connection.room(asked.room());
    asked
        .room()
        .come(
            connection,
            new RoomEvent.Came(
                connection.number(), asked.message(), rooms.freshToken(), rooms.freshToken()),
            () -> context.executor().execute(() -> answered(context)));
  }

  private void answered(ChannelHandlerContext context) {
    hold.lift();
    hold.readOn(context);
    if (!connection.joined() && !connection.closing()) {
      await(context, ANOTHER_MILLIS);
    }
  }
}
