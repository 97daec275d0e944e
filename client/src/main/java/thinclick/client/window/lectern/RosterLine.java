package thinclick.client.window.lectern;

import java.util.stream.Stream;
import thinclick.protocol.message.ServerMessage.Person;

/**
 * One line of the roster, in words.
 *
 * @param person who it is
 * @param chair the chair's number, from 1; empty for who is dealt nothing
 * @param does the role in what is chosen, or leads, listens, stands in
 * @param clock how well the client knows room time
 * @param sound whether the chair's delay is measured
 * @param ready whether the dealt part has been read; away where nobody is there
 */
public record RosterLine(
    Person person, String chair, String does, String clock, String sound, String ready) {

  /** The whole line for those who hear it. */
  public String spoken() {
    return String.join(
        ", ",
        Stream.of(chair, person.name(), does, clock, sound, ready)
            .filter(word -> !word.isEmpty())
            .toList());
  }
}
