package thinclick.client.window;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.door.DoorModel;
import thinclick.client.window.look.Look.Shade;

/**
 * How the window was asked to open.
 *
 * @param way which way into a room is taken at once
 * @param server the address of a host; empty for none
 * @param room the room word; empty for none
 * @param name the player's name; empty for none
 * @param forOthers true where other computers of the network may come into a room opened here
 * @param shade light or dark, null where nothing was asked for
 */
public record WindowOptions(
    Way way, String server, String room, String name, boolean forOthers, @Nullable Shade shade) {
  /** The ways into a room. */
  public enum Way {
    /** None: the door is shown. */
    DOOR,
    /** The page for practising alone. */
    PRACTICE,
    /** A room hosted in this window. */
    HERE,
    /** A new room at a host elsewhere. */
    THERE,
    /** A room that is there. */
    JOIN
  }

  /** Reads what {@link #arguments()} wrote. */
  static WindowOptions of(Map<String, String> named) {
    String shade = named.getOrDefault("shade", "");
    return new WindowOptions(
        Way.valueOf(named.getOrDefault("way", "DOOR")),
        named.getOrDefault("server", ""),
        named.getOrDefault("room", ""),
        named.getOrDefault("name", ""),
        Boolean.parseBoolean(named.getOrDefault("forOthers", "false")),
        shade.isEmpty() ? null : Shade.valueOf(shade));
  }

  /** As arguments for the toolkit. */
  String[] arguments() {
    return new String[] {
      "--way=" + way,
      "--server=" + server,
      "--room=" + room,
      "--name=" + name,
      "--forOthers=" + forOthers,
      "--shade=" + (shade == null ? "" : shade)
    };
  }

  /** Writes at the door what was given, and takes the way that was asked for. */
  void lead(DoorModel door) {
    if (!name.isEmpty()) {
      door.name().write(name);
    }
    if (!server.isEmpty()) {
      door.address().write(server);
    }
    if (!room.isEmpty()) {
      door.word().write(room);
    }
    door.forOthersProperty().set(forOthers);
    switch (way) {
      case DOOR -> {}
      case PRACTICE -> door.practise();
      case HERE -> door.openHere();
      case THERE -> door.openThere();
      case JOIN -> door.join();
    }
  }
}
