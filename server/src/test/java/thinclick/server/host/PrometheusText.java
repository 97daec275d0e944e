package thinclick.server.host;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads the text format 0.0.4 as its description asks of a reader (Prometheus documentation,
 * "Exposition formats", text format details), and refuses all else; shares nothing with the writer.
 */
final class PrometheusText {
  private static final Pattern SAMPLE =
      Pattern.compile("([a-zA-Z_:][a-zA-Z0-9_:]*)(?:\\{(.*)})?[ \\t]+(\\S+)(?:[ \\t]+(-?\\d+))?");
  private static final Pattern LABEL =
      Pattern.compile("([a-zA-Z_][a-zA-Z0-9_]*)=\"((?:[^\"\\\\\\n]|\\\\[\\\\\"n])*)\"(?:,|$)");
  private static final List<String> KINDS =
      List.of("counter", "gauge", "histogram", "summary", "untyped");

  private final Map<String, String> kinds = new LinkedHashMap<>();
  private final Map<String, Double> values = new LinkedHashMap<>();
  private final Map<String, List<double[]>> buckets = new HashMap<>();

  static PrometheusText read(String text) {
    PrometheusText read = new PrometheusText();
    if (!text.endsWith("\n")) {
      throw new AssertionError("expected a line feed at the end");
    }
    text.lines().forEach(read::line);
    read.histogramsAreWhole();
    return read;
  }

  private void line(String line) {
    if (line.isBlank()) {
      return;
    }
    String[] words = line.split("[ \\t]+", 4);
    if (words[0].equals("#")) {
      if (words[1].equals("TYPE")) {
        if (words.length != 4 || !KINDS.contains(words[3])) {
          throw new AssertionError("no type: " + line);
        }
        if (kinds.put(words[2], words[3]) != null) {
          throw new AssertionError("a second TYPE: " + line);
        }
      }
      return;
    }
    Matcher sample = SAMPLE.matcher(line);
    if (!sample.matches()) {
      throw new AssertionError("no sample: " + line);
    }
    double value = number(sample.group(3));
    String name = sample.group(1);
    Map<String, String> labels = labels(sample.group(2) == null ? "" : sample.group(2));
    String edge = labels.remove("le");
    if (edge != null && name.endsWith("_bucket")) {
      buckets
          .computeIfAbsent(
              name.substring(0, name.length() - "_bucket".length()), n -> new ArrayList<>())
          .add(new double[] {number(edge), value});
    } else if (values.put(name + (labels.isEmpty() ? "" : labels), value) != null) {
      throw new AssertionError("a second sample: " + line);
    }
    if (kinds.keySet().stream().noneMatch(name::startsWith)) {
      throw new AssertionError("a sample before its TYPE: " + line);
    }
  }

  private static Map<String, String> labels(String text) {
    Map<String, String> found = new LinkedHashMap<>();
    int end = 0;
    Matcher label = LABEL.matcher(text);
    while (label.find() && label.start() == end) {
      found.put(label.group(1), label.group(2));
      end = label.end();
    }
    if (end != text.length()) {
      throw new AssertionError("no labels: " + text);
    }
    return found;
  }

  private static double number(String text) {
    return switch (text) {
      case "+Inf" -> Double.POSITIVE_INFINITY;
      case "-Inf" -> Double.NEGATIVE_INFINITY;
      case "NaN" -> Double.NaN;
      default -> Double.parseDouble(text);
    };
  }

  /** Buckets rise in edge and in count, and the last one is without end and holds all. */
  private void histogramsAreWhole() {
    buckets.forEach(
        (name, edges) -> {
          double[] last = {Double.NEGATIVE_INFINITY, 0};
          for (double[] edge : edges) {
            if (edge[0] <= last[0] || edge[1] < last[1]) {
              throw new AssertionError(name + ": buckets out of order");
            }
            last = edge;
          }
          if (last[0] != Double.POSITIVE_INFINITY || last[1] != value(name + "_count")) {
            throw new AssertionError(name + ": the last bucket does not hold all");
          }
        });
  }

  double value(String name) {
    Double value = values.get(name);
    if (value == null) {
      throw new AssertionError("expected " + name + " among " + values.keySet());
    }
    return value;
  }

  String kind(String family) {
    return kinds.get(family);
  }

  /** The edges of a histogram, the one without end left out. */
  List<Double> edges(String name) {
    return buckets.get(name).stream().map(edge -> edge[0]).filter(Double::isFinite).toList();
  }
}
