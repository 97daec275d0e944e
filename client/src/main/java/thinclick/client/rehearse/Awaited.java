package thinclick.client.rehearse;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import thinclick.client.link.LinkState;
import thinclick.client.link.RoomListener;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;

/** What a rehearsal waits for from its room, one thing after the other, and for how long. */
final class Awaited implements RoomListener {
  static final long PATIENCE_SECONDS = 20;

  final CompletableFuture<String> word = new CompletableFuture<>();

  /** Everybody's playerId in the order of the players, once all are here and know the clock. */
  final CompletableFuture<List<String>> seated = new CompletableFuture<>();

  final CompletableFuture<ServerMessage.Dealt> dealt = new CompletableFuture<>();
  final CompletableFuture<Boolean> ready = new CompletableFuture<>();
  final CompletableFuture<TakeNews.Announced> announced = new CompletableFuture<>();
  final CompletableFuture<TakeNews.ReviewReady> reviewed = new CompletableFuture<>();
  private final List<String> players;

  Awaited(List<String> players) {
    this.players = players;
  }

  @Override
  public void welcome(ServerMessage.Welcome welcome) {
    word.complete(welcome.room());
  }

  @Override
  public void linkChanged(LinkState state, String says) {
    if (state == LinkState.CLOSED) {
      BadInput gone = new BadInput("", "the leader's line is gone: " + says);
      Stream.of(word, seated, dealt, ready, announced, reviewed)
          .forEach(waiting -> waiting.completeExceptionally(gone));
    }
  }

  @Override
  public void roster(ServerMessage.Roster roster) {
    Map<String, ServerMessage.Person> here = new HashMap<>();
    roster.players().forEach(person -> here.put(person.name(), person));
    List<String> ids = new ArrayList<>();
    boolean allReady = true;
    for (String name : players) {
      ServerMessage.Person person = here.get(name);
      if (person == null || !person.connected() || person.uncertaintyMicros() == null) {
        return;
      }
      ids.add(person.playerId());
      allReady &= person.ready();
    }
    seated.complete(ids);
    if (allReady && dealt.isDone()) {
      ready.complete(true);
    }
  }

  @Override
  public void dealt(ServerMessage.Dealt hand) {
    dealt.complete(hand);
  }

  @Override
  public void announced(TakeNews.Announced take) {
    announced.complete(take);
  }

  @Override
  public void reviewReady(TakeNews.ReviewReady review) {
    if (!review.provisional()) {
      reviewed.complete(review);
    }
  }

  /**
   * Waits.
   *
   * @param what named where it does not come
   * @throws BadInput where it does not come in time, or the line is gone
   */
  static <T> T await(String what, CompletableFuture<T> coming) {
    return await(what, coming, PATIENCE_SECONDS);
  }

  /** The same, for so long. */
  static <T> T await(String what, CompletableFuture<T> coming, long seconds) {
    try {
      return coming.get(seconds, TimeUnit.SECONDS);
    } catch (TimeoutException late) {
      throw new BadInput("", "waited " + seconds + " s for " + what + " in vain");
    } catch (ExecutionException problem) {
      Throwable cause = problem.getCause();
      if (cause instanceof BadInput bad) {
        throw bad;
      }
      throw new BadInput("", "no " + what + ": " + (cause == null ? problem : cause).getMessage());
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
      throw new BadInput("", "interrupted while waiting for " + what);
    }
  }
}
