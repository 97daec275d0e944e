package thinclick.client.window;

import thinclick.client.window.check.CheckModel;
import thinclick.client.window.session.Session;
import thinclick.client.window.settings.InputSettings;
import thinclick.client.window.settings.SoundSettings;
import thinclick.client.window.words.Words;

/**
 * Those who play at this computer: their chairs, what they tap on, how that is measured, and what
 * they hear.
 */
final class PlayersHere implements AutoCloseable {
  private final SoundDesk sound;
  private final Chairs chairs;
  private final CheckModel check;
  private final Taps taps;
  private final RoomCheck roomCheck;
  private final Partners partners;

  PlayersHere(Session session, Words words, SoundSettings remembered, InputSettings input) {
    sound = new SoundDesk(session, words, remembered);
    chairs = new Chairs(session, sound, words);
    check = new CheckModel(words, sound, WindowThread.INSTANCE, chairs::judged);
    taps = new Taps(session, chairs, words, check, input);
    roomCheck = new RoomCheck(session, chairs, check, sound::stumbledIn);
    taps.onPlayed((chair, attack) -> roomCheck.tapped(chair, attack.nanos()));
    partners = new Partners(session, sound, words);
  }

  SoundDesk sound() {
    return sound;
  }

  Chairs chairs() {
    return chairs;
  }

  CheckModel check() {
    return check;
  }

  Taps taps() {
    return taps;
  }

  RoomCheck roomCheck() {
    return roomCheck;
  }

  Partners partners() {
    return partners;
  }

  /** What needs time comes once the window is up. */
  void start() {
    sound.start();
    taps.start();
    check.start();
  }

  /** Looks at the clock for what does not concern the page. */
  void look(long nanos) {
    check.look(nanos);
    partners.look(nanos);
  }

  @Override
  public void close() {
    taps.close();
    sound.close();
  }
}
