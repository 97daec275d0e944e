package thinclick.protocol.json;

import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.deser.std.StdDeserializer;

/**
 * Fields that may be left out though their value is a primitive; a written null is still refused.
 */
public final class Absent {
  private Absent() {}

  /** A flag that is false where it is left out. */
  public static final class MeansFalse extends StdDeserializer<Boolean> {
    public MeansFalse() {
      super(boolean.class);
    }

    @Override
    public Boolean deserialize(JsonParser parser, DeserializationContext context) {
      JsonToken token = parser.currentToken();
      if (token != JsonToken.VALUE_TRUE && token != JsonToken.VALUE_FALSE) {
        throw new BadInput("", "expected true or false, found " + parser.getString());
      }
      return token == JsonToken.VALUE_TRUE;
    }

    @Override
    public Object getNullValue(DeserializationContext context) {
      throw new BadInput("", "expected true or false, found null");
    }

    @Override
    public Object getAbsentValue(DeserializationContext context) {
      return false;
    }
  }

  /** A number that is 0 where it is left out. */
  public static final class MeansZero extends StdDeserializer<Double> {
    public MeansZero() {
      super(double.class);
    }

    @Override
    public Double deserialize(JsonParser parser, DeserializationContext context) {
      if (!parser.currentToken().isNumeric()) {
        throw new BadInput("", "expected a number, found " + parser.getString());
      }
      return parser.getDoubleValue();
    }

    @Override
    public Object getNullValue(DeserializationContext context) {
      throw new BadInput("", "expected a number, found null");
    }

    @Override
    public Object getAbsentValue(DeserializationContext context) {
      return 0.0;
    }
  }
}
