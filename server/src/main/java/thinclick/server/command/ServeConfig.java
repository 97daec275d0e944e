package thinclick.server.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.server.material.Nearest;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.toml.TomlMapper;

/**
 * Options of {@code serve} from a TOML file: the keys are the long options without their hyphens.
 * Every complaint says file, line and key.
 */
final class ServeConfig {
  /** What makes no sense in a file. */
  private static final Set<String> TERMINAL_ONLY =
      Set.of("config", "print-config", "help", "version");

  /** A key: its line, and the options that it comes to. */
  private record Entry(int line, List<String> arguments) {}

  private final Path file;
  private final Map<String, Entry> entries = new LinkedHashMap<>();

  private ServeConfig(Path file) {
    this.file = file;
  }

  static ServeConfig read(Path file, CommandSpec spec) {
    String text = text(file);
    JsonNode root;
    try {
      root = new TomlMapper().readTree(text);
    } catch (JacksonException wrong) {
      throw NotToml.explain(file, text, wrong);
    }
    ServeConfig config = new ServeConfig(file);
    root.properties()
        .forEach(
            each -> config.take(each.getKey(), each.getValue(), line(text, each.getKey()), spec));
    return config;
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (NoSuchFileException missing) {
      throw new BadInput("--config", "expected a file, found none at " + file);
    } catch (IOException unreadable) {
      throw new BadInput("--config", "expected a text, found " + unreadable.getMessage());
    }
  }

  /** The first line that begins with the key, quoted or not, or with its table. */
  private static int line(String text, String key) {
    Pattern begins =
        Pattern.compile("\\s*\\[*\\s*[\"']?" + Pattern.quote(key) + "[\"']?\\s*[=.\\]].*");
    List<String> lines = text.lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      if (begins.matcher(lines.get(i)).matches()) {
        return i + 1;
      }
    }
    return 1;
  }

  private void take(String key, JsonNode value, int line, CommandSpec spec) {
    OptionSpec option = TERMINAL_ONLY.contains(key) ? null : spec.optionsMap().get("--" + key);
    if (option == null) {
      throw new BadInput(where(line, key), "no such key; " + Nearest.didYouMean(key, keys(spec)));
    }
    if (!value.isString() && !value.isIntegralNumber() && !value.isBoolean()) {
      throw new BadInput(
          where(line, key), "expected a text, a whole number, true or false, found " + value);
    }
    String said = value.isString() ? value.stringValue() : value.toString();
    if (said.chars().anyMatch(Character::isISOControl)) {
      // "c:\rooms" is TOML for c:, a carriage return and ooms: nobody means that.
      throw new BadInput(
          where(line, key),
          "expected a text without control characters; a backslash is written twice, found "
              + value);
    }
    boolean flag = option.arity().max() == 0;
    if (flag && !value.isBoolean()) {
      throw new BadInput(where(line, key), "expected true or false, found " + value);
    }
    check(option, said, flag, where(line, key));
    entries.put(
        key,
        new Entry(
            line,
            !flag
                ? List.of("--" + key, said)
                : value.booleanValue() ? List.of("--" + key) : List.of()));
  }

  /** Refuses what the option's own type would refuse. */
  private static void check(OptionSpec option, String said, boolean flag, String where) {
    if (!flag && option.type() == int.class && !said.matches("-?\\d{1,9}")) {
      throw new BadInput(where, "expected a whole number, found \"" + said + "\"");
    }
    if (!flag && option.type() == boolean.class && !said.matches("true|false")) {
      throw new BadInput(where, "expected true or false, found \"" + said + "\"");
    }
  }

  private String where(int line, String key) {
    return file + ":" + line + ": " + key;
  }

  private static List<String> keys(CommandSpec spec) {
    Set<String> keys = new TreeSet<>();
    spec.optionsMap().keySet().stream()
        .filter(name -> name.startsWith("--"))
        .map(name -> name.substring(2))
        .filter(name -> !TERMINAL_ONLY.contains(name))
        .forEach(keys::add);
    return List.copyOf(keys);
  }

  /** The file's options and then those said on the command line, of which the last counts. */
  List<String> before(List<String> said) {
    List<String> all = new ArrayList<>();
    entries.values().forEach(entry -> all.addAll(entry.arguments()));
    all.addAll(said);
    return all;
  }

  /** A complaint about an option, as one about the file where the option came from there. */
  BadInput explain(BadInput bad, List<String> said) {
    String key = bad.where().startsWith("--") ? bad.where().substring(2) : "";
    Entry entry = entries.get(key);
    boolean overridden =
        said.stream()
            .anyMatch(word -> word.equals("--" + key) || word.startsWith("--" + key + "="));
    return entry == null || overridden ? bad : new BadInput(where(entry.line(), key), bad.says());
  }

  /** A file with every key, its meaning and its default, all of it commented out. */
  static String withDefaults(CommandSpec spec) {
    StringBuilder text = new StringBuilder("# Options of serve. Take a # away to change one.\n");
    for (String key : keys(spec)) {
      OptionSpec option = Check.present(key, spec.optionsMap().get("--" + key));
      text.append('\n');
      for (String line : option.description()) {
        text.append("# ").append(line.replace("${DEFAULT-VALUE}", shown(option))).append('\n');
      }
      text.append("# ").append(key).append(" = ").append(example(option)).append('\n');
    }
    return text.toString();
  }

  private static String shown(OptionSpec option) {
    return option.defaultValue() == null ? "none" : option.defaultValue();
  }

  private static String example(OptionSpec option) {
    String value = option.defaultValue();
    if (option.type() == int.class || option.type() == boolean.class) {
      return value == null ? "false" : value;
    }
    return '"' + (value == null ? option.paramLabel() : value) + '"';
  }
}
