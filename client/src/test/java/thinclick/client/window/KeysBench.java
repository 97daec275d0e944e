package thinclick.client.window;

import java.awt.Robot;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import javafx.application.Platform;
import thinclick.client.standin.Manner;
import thinclick.client.window.look.EvenLetters;
import thinclick.client.window.look.Faces;
import thinclick.client.window.session.Company;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.SettingsFile;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.material.Stock;

/**
 * Presses keys on the display's own keyboard and takes the time until they are stamped: where
 * nothing moves, and while a take runs on the stand. The last line is what is read.
 */
final class KeysBench {
  private static final int KEYS = 300;
  private static final long PATIENCE_SECONDS = 30;

  private final LinkedBlockingQueue<Long> stamps = new LinkedBlockingQueue<>();
  private Robot robot;
  private final Random luck = new Random(4);
  private Session session;
  private Desk desk;

  public static void main(String[] args) throws Exception {
    int exit = 1;
    try {
      new KeysBench().run();
      exit = 0;
    } finally {
      System.exit(exit); // the toolkit's thread would stay
    }
  }

  private void run() throws Exception {
    CountDownLatch up = new CountDownLatch(1);
    EvenLetters.ask(System.getProperties());
    Platform.startup(up::countDown);
    up.await();
    robot = new Robot(); // after the toolkit: the other way round it finds no display
    Path folder = Files.createTempDirectory("keys");
    on(
        () -> {
          Faces.load();
          javafx.stage.Stage stage = new javafx.stage.Stage();
          session = new Session(WindowThread.INSTANCE, MonotonicClock.SYSTEM, folder);
          desk = new Desk(stage, session, Words.in(Locale.ENGLISH), new SettingsFile(folder));
          stage.addEventFilter(
              javafx.scene.input.KeyEvent.KEY_PRESSED,
              event -> {
                long nanos = System.nanoTime();
                if (event.getCode().isLetterKey()) {
                  stamps.add(nanos);
                }
              });
          stage.show();
          desk.start();
          stage.requestFocus();
          return null;
        });
    pause(3_000);
    press(60); // the code gets warm
    double[] still = press(KEYS);
    print("nothing moves", still);

    on(
        () -> {
          session.practise(
              "Ana",
              new Company(
                  Stock.find("Four-chair canon"),
                  90,
                  0,
                  List.of(Manner.STEADY, Manner.STEADY, Manner.STEADY)));
          return null;
        });
    until(() -> session.state().phase() == Phase.DEALT);
    on(
        () -> {
          session.lead().countIn();
          return null;
        });
    until(
        () ->
            session.state().takeRuns()
                && session.link().roomMicros(System.nanoTime())
                    > session.state().announced().startMicros());
    double[] moving = press(KEYS);
    boolean whole = on(() -> session.state().takeRuns());
    print("a take runs" + (whole ? "" : " (it ended meanwhile)"), moving);
    on(
        () -> {
          desk.close();
          return null;
        });
    try (Stream<Path> inside = Files.walk(folder)) {
      for (Path each : inside.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(each);
      }
    } catch (IOException stillWriting) {
      System.out.println("left behind: " + folder);
    }
    System.out.printf(Locale.ROOT, "keys: p50 %.2f p99 %.2f%n", at(moving, 0.5), at(moving, 0.99));
  }

  /** Presses keys a while apart, at no steady rate; milliseconds each took, in rising order. */
  private double[] press(int count) throws InterruptedException {
    List<Double> millis = new ArrayList<>();
    int lost = 0;
    for (int i = 0; i < count; i++) {
      pause(50 + luck.nextInt(40));
      stamps.clear();
      int key = KeyEvent.VK_A + luck.nextInt(26);
      long before = System.nanoTime();
      robot.keyPress(key);
      Long stamp = stamps.poll(2, TimeUnit.SECONDS);
      robot.keyRelease(key);
      if (stamp == null) {
        lost++;
      } else {
        millis.add((stamp - before) / 1e6);
      }
    }
    if (lost > 0) {
      System.out.println(lost + " of " + count + " keys did not arrive");
    }
    return millis.stream().mapToDouble(Double::doubleValue).sorted().toArray();
  }

  private static void print(String where, double[] rising) {
    System.out.printf(
        Locale.ROOT,
        "%s: %d keys, p50 %.2f p90 %.2f p99 %.2f worst %.2f ms%n",
        where,
        rising.length,
        at(rising, 0.5),
        at(rising, 0.9),
        at(rising, 0.99),
        at(rising, 1));
  }

  private static double at(double[] rising, double share) {
    return rising.length == 0
        ? Double.NaN
        : rising[Math.max(0, (int) Math.ceil(rising.length * share) - 1)];
  }

  private static void until(Callable<Boolean> holds) {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    while (!on(holds)) {
      if (System.nanoTime() > end) {
        throw new IllegalStateException("waited in vain");
      }
      pause(20);
    }
  }

  private static void pause(long millis) {
    long end = System.nanoTime() + millis * 1_000_000L;
    while (System.nanoTime() < end) {
      LockSupport.parkNanos(end - System.nanoTime());
    }
  }

  private static <T> T on(Callable<T> asked) {
    CompletableFuture<T> answer = new CompletableFuture<>();
    Platform.runLater(
        () -> {
          try {
            answer.complete(asked.call());
          } catch (Exception failed) {
            answer.completeExceptionally(failed);
          }
        });
    return answer.join();
  }
}
