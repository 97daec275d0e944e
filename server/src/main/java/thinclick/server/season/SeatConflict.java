package thinclick.server.season;

import thinclick.protocol.file.SeasonFile.Member;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;

/** Somebody in two lists of a class, of whom they do not say the same; what is here stays. */
public record SeatConflict(Member here, Member inFile) {
  /** "Mina: here chair 1, drum kit; in the file chair 3. What is here stays." */
  public String say(Speaker speaker) {
    return speaker.say(Said.of("season.conflict", here.name(), of(here), of(inFile)));
  }

  private static Said of(Member member) {
    Said chair =
        member.chair() == null
            ? Said.of("season.noChair")
            : Said.of("season.atChair", Integer.toString(member.chair()));
    String instrument = member.instrument();
    return instrument == null ? chair : Said.of("season.atChairWith", chair, instrument);
  }
}
