package thinclick.client.link;

import java.util.List;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;

/** Keeps the latest of what a link was told, for tests and benches that wait for it. */
public abstract class LatestTold implements RoomListener {
  public volatile ServerMessage.Roster roster = new ServerMessage.Roster(0, List.of());
  public volatile ServerMessage.Dealt dealt;
  public volatile TakeNews.Announced announced;
  public volatile TakeNews.Stopped stopped;
  public volatile TakeNews.ReviewReady review;

  @Override
  public void roster(ServerMessage.Roster now) {
    roster = now;
  }

  @Override
  public void dealt(ServerMessage.Dealt now) {
    dealt = now;
  }

  @Override
  public void announced(TakeNews.Announced now) {
    announced = now;
  }

  @Override
  public void stopped(TakeNews.Stopped now) {
    stopped = now;
  }

  @Override
  public void reviewReady(TakeNews.ReviewReady now) {
    review = now;
  }
}
