package thinclick.server.scoring.model;

import org.jspecify.annotations.Nullable;

/** The fits as the delay's account reads them. */
final class FittedPlayers implements DelayAccounting.Players {
  private final @Nullable FittedPlayer[] fitted;

  FittedPlayers(@Nullable FittedPlayer[] fitted) {
    this.fitted = fitted;
  }

  private FittedPlayer player(int i) {
    FittedPlayer player = fitted[i];
    if (player == null) {
      throw new IllegalStateException("expected every player fitted, found none for " + i);
    }
    return player;
  }

  @Override
  public boolean hears(int i, int j) {
    return i != j && player(i).gainTo(j) >= 0;
  }

  @Override
  public double gain(int i, int j) {
    return hears(i, j) ? player(i).sweep().gain(player(i).gainTo(j)) : 0;
  }

  @Override
  public double covariance(int i, int j, int k) {
    FittedPlayer player = player(i);
    return player.fit().covariance[player.gainTo(j)][player.gainTo(k)];
  }

  @Override
  public double timekeeper(int i) {
    double sd = player(i).fit().timekeeperSd();
    return sd * sd;
  }

  @Override
  public double motor(int i) {
    double sd = player(i).fit().motorSd();
    return sd * sd;
  }
}
