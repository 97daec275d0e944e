package thinclick.server.watch;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.DistributionSummary;
import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.Timer;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntSupplier;
import java.util.function.LongSupplier;

/**
 * The figures of one host, as Prometheus reads them. No figure is of one person or one room: no
 * name, no word and no id is among the labels.
 */
public final class HostMeters {
  private final PrometheusMeterRegistry registry =
      new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
  private final AtomicInteger connections = new AtomicInteger();
  private final AtomicInteger players = new AtomicInteger();
  private final Counter attacks =
      Counter.builder("thinclick.attacks")
          .description("Attacks received, resent ones included.")
          .register(registry);
  private final Counter stored =
      Counter.builder("thinclick.attacks.stored")
          .description("Attacks committed to the disk.")
          .register(registry);
  private final Counter heardDropped =
      Counter.builder("thinclick.heard.dropped")
          .description("heard messages left out for receivers that lag.")
          .register(registry);
  private final Counter refused =
      Counter.builder("thinclick.handshakes.refused")
          .description("Encrypted lines refused because too many were begun.")
          .register(registry);
  private final Timer acknowledgement =
      Timer.builder("thinclick.acknowledgement")
          .description("From an attack's arrival at its room to its commit.")
          .serviceLevelObjectives(millis(1, 2, 5, 10, 20, 50, 100, 200, 500, 1_000, 5_000))
          .register(registry);
  private final DistributionSummary clock =
      DistributionSummary.builder("thinclick.clock.uncertainty")
          .baseUnit("seconds")
          .scale(1e-6)
          .description("What clients report that they do not know of room time.")
          .serviceLevelObjectives(.0002, .0005, .001, .002, .005, .01, .02, .05, .1)
          .register(registry);
  private final Timer pauses =
      Timer.builder("thinclick.pauses")
          .description("Stretches over 50 ms in which nothing in this process ran.")
          .serviceLevelObjectives(millis(50, 100, 200, 500, 1_000, 5_000))
          .register(registry);

  private volatile LongSupplier storeRefusals = () -> 0;

  public HostMeters() {
    gauge("thinclick.connections", "Open conversations.", connections::get);
    gauge("thinclick.players", "People and stand-ins in rooms now.", players::get);
    // The registry holds what it asks weakly; a supplier of its own would be gone at the next
    // collection, and the count with it.
    FunctionCounter.builder(
            "thinclick.store.refused", this, meters -> meters.storeRefusals.getAsLong())
        .description("Writes that the database refused for good.")
        .register(registry);
  }

  private static Duration[] millis(long... edges) {
    Duration[] all = new Duration[edges.length];
    for (int i = 0; i < edges.length; i++) {
      all[i] = Duration.ofMillis(edges[i]);
    }
    return all;
  }

  private void gauge(String name, String says, IntSupplier value) {
    Gauge.builder(name, value::getAsInt).description(says).register(registry);
  }

  /** Where the number of rooms is to be asked. */
  public void rooms(IntSupplier count) {
    gauge("thinclick.rooms", "Open rooms.", count);
  }

  /** Where the number of writes that the database refused for good is to be asked. */
  public void storeRefusals(LongSupplier count) {
    storeRefusals = count;
  }

  public void connected(int change) {
    connections.addAndGet(change);
  }

  public void inRoom(int change) {
    players.addAndGet(change);
  }

  public void received(int count) {
    attacks.increment(count);
  }

  /** So many attacks are on the disk, {@code nanos} after their room had them. */
  public void stored(int count, long nanos) {
    stored.increment(count);
    acknowledgement.record(nanos, TimeUnit.NANOSECONDS);
  }

  public void heardDropped() {
    heardDropped.increment();
  }

  public void handshakeRefused() {
    refused.increment();
  }

  /** A client's report, microseconds. */
  public void clockUncertainty(long micros) {
    clock.record((double) micros);
  }

  /** Nothing ran for so long. */
  public void paused(long nanos) {
    pauses.record(nanos, TimeUnit.NANOSECONDS);
  }

  /** All of it in the text format of Prometheus, version 0.0.4. */
  public String text() {
    return registry.scrape();
  }
}
