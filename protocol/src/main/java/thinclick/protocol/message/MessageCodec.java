package thinclick.protocol.message;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.StrictJson;
import tools.jackson.core.JacksonException;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.core.exc.StreamReadException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectReader;
import tools.jackson.databind.ObjectWriter;
import tools.jackson.databind.exc.InvalidTypeIdException;
import tools.jackson.databind.json.JsonMapper;

/** Messages to and from JSON text, one message a frame. */
public final class MessageCodec {
  /** The wire version this code speaks. */
  public static final int VERSION = 1;

  /** Where on the host's port the WebSocket conversation lives. */
  public static final String PATH = "/room";

  /** The largest frame a client may send, bytes. */
  public static final int MAX_CLIENT_FRAME = 16 << 10;

  /** The largest frame a server sends, bytes. */
  public static final int MAX_SERVER_FRAME = 256 << 10;

  private static final JsonMapper CLIENT = StrictJson.mapper(false, MAX_CLIENT_FRAME);
  private static final JsonMapper SERVER = StrictJson.mapper(false, MAX_SERVER_FRAME);

  // Kept, since finding a type's reader or writer takes longer than a short message.
  private static final ObjectReader CLIENT_READER = CLIENT.readerFor(ClientMessage.class);
  private static final ObjectReader SERVER_READER = SERVER.readerFor(ServerMessage.class);
  private static final ObjectWriter CLIENT_WRITER = CLIENT.writerFor(ClientMessage.class);
  private static final ObjectWriter SERVER_WRITER = SERVER.writerFor(ServerMessage.class);

  private MessageCodec() {}

  /** A message of a type that this version does not know. */
  public static final class UnknownType extends RuntimeException {
    private static final long serialVersionUID = 1L;

    UnknownType(String says) {
      super(says, null, false, false); // strangers cause it; where it was found tells nothing
    }
  }

  /** Text that is no message at all: not JSON, not an object, or without a type. */
  public static final class Malformed extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Malformed(String says) {
      super(says, null, false, false); // as above
    }
  }

  /**
   * Reads what a client sent.
   *
   * @throws Malformed where the text is no message at all
   * @throws BadInput where a field is wrong
   * @throws UnknownType where the type is not known
   */
  public static ClientMessage readClient(String json) {
    ClientMessage common = AtAGlance.attacks(json);
    return common == null ? readStrictly(json) : common;
  }

  /** As {@link #readClient}, by the reader that decides where there is any doubt. */
  static ClientMessage readStrictly(String json) {
    return read(CLIENT_READER, json, ClientMessage.class);
  }

  /** Reads what a server sent; throws as {@link #readClient}. */
  public static ServerMessage readServer(String json) {
    return read(SERVER_READER, json, ServerMessage.class);
  }

  /** Writes a client's message. */
  public static String write(ClientMessage message) {
    return CLIENT_WRITER.writeValueAsString(message);
  }

  /** Writes a server's message. */
  public static String write(ServerMessage message) {
    return SERVER_WRITER.writeValueAsString(message);
  }

  /**
   * The requestId in a command that could not be read otherwise, so that its error can name it;
   * null where none can be found.
   */
  public static @Nullable Long requestIdIn(String json) {
    try {
      JsonNode tree = CLIENT.readTree(json);
      JsonNode id = tree == null || !tree.isObject() ? null : tree.get("requestId");
      return id != null && id.isIntegralNumber() && id.canConvertToLong() ? id.asLong() : null;
    } catch (JacksonException noJson) {
      return null;
    }
  }

  /** As {@link #write(ServerMessage)}, in UTF-8. */
  public static byte[] writeBytes(ServerMessage message) {
    if (message instanceof AnswerMessage.LibraryList list) {
      return LibraryText.of(list);
    }
    byte[] heard = message instanceof TakeNews.Heard it ? HeardText.of(it) : null;
    return heard == null ? writeByFields(message) : heard;
  }

  /** The same by the general writer. */
  static byte[] writeByFields(ServerMessage message) {
    return SERVER_WRITER.writeValueAsBytes(message);
  }

  private static <T> T read(ObjectReader reader, String json, Class<T> type) {
    if (!json.stripLeading().startsWith("{")) {
      throw new Malformed("expected an object, found something else"); // Jackson takes lists too
    }
    T message;
    try {
      message = type.cast(reader.readValue(json));
    } catch (InvalidTypeIdException unknown) {
      if (unknown.getTypeId() == null) {
        throw new Malformed("expected an object with a type, found none");
      }
      throw new UnknownType("unknown message type \"" + unknown.getTypeId() + "\"");
    } catch (JacksonException problem) {
      BadInput bad = StrictJson.explain(problem);
      throw ofTheWhole(problem) ? new Malformed(String.valueOf(bad.getMessage())) : bad;
    }
    if (message == null) {
      throw new Malformed("expected an object, found null");
    }
    return message;
  }

  /** True where the text itself is at fault, false where one of its fields is. */
  private static boolean ofTheWhole(JacksonException problem) {
    for (Throwable cause = problem.getCause(); cause != null; cause = cause.getCause()) {
      if (cause instanceof BadInput) {
        return false; // a record's own complaint
      }
    }
    return problem instanceof StreamReadException
        || problem instanceof StreamConstraintsException
        || problem.getPath().isEmpty();
  }
}
