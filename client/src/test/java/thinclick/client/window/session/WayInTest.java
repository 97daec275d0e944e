package thinclick.client.window.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.RoomAddress;
import thinclick.protocol.time.MonotonicClock;

/** A host takes a moment to start, and whoever waits for it may think better of it. */
class WayInTest {
  @TempDir Path folder;

  /** The test's own thread is the window's: what is to be done there waits until it is taken. */
  private final BlockingQueue<Runnable> window = new LinkedBlockingQueue<>();

  private final List<RoomAddress> opened = new ArrayList<>();
  private LinkLoop loop;
  private Presence presence;
  private OwnHost host;
  private WayIn way;

  @BeforeEach
  void atTheDoor() {
    loop = LinkLoop.start();
    presence = new Presence(window::add, MonotonicClock.SYSTEM, (before, now) -> {});
    host = new OwnHost(folder, Locale.ENGLISH);
    way = new WayIn(window::add, MonotonicClock.SYSTEM, loop, folder, presence, host);
  }

  @AfterEach
  void leave() {
    presence.leave();
    host.end();
    loop.close();
  }

  @Test
  void whoHasLeftBeforeTheHostWasUpEntersNothing() throws InterruptedException {
    way.openHere("Ana", false, opened::add);
    way.left();
    goOn();
    assertThat(opened).isEmpty();
    assertThat(presence.link()).isNull();
    assertThat(way.at()).isNull();
    assertThat(host.running()).isNull();
  }

  @Test
  void whoOpensAnotherRoomMeanwhileEntersThatOne() throws InterruptedException {
    way.openHere("Ana", false, opened::add);
    way.left();
    way.openHere("Ben", false, opened::add);
    goOn();
    assertThat(opened).as("the first is not wanted any more").isEmpty();
    goOn();
    assertThat(opened).containsExactly(way.at());
    assertThat(presence.link()).isNotNull();
    assertThat(host.running()).isNotNull();
  }

  /** What waits for the window's thread, as soon as it does. */
  private void goOn() throws InterruptedException {
    Runnable next = window.poll(60, TimeUnit.SECONDS);
    assertThat(next).as("a host has started").isNotNull();
    next.run();
  }
}
