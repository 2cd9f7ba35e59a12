package org.thumbseal.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Json;
import org.thumbseal.report.VerdictShape;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What the page is made of, read once from the program itself. A path is looked up in a table and
 * never in a folder, so that no path leads anywhere else.
 */
final class StaticFiles {
  /** The languages of the page; the first one stands in where another lacks a word. */
  static final List<String> LANGUAGES = List.of("en", "fr", "pt", "sw");

  private static final Map<String, String> TYPES =
      Map.of(
          "html", "text/html; charset=utf-8",
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "svg", "image/svg+xml");

  private static final String JSON = "application/json; charset=utf-8";

  private final Map<String, StaticFile> files = new HashMap<>();

  /**
   * One file.
   *
   * @param type media type
   * @param content never changed
   */
  record StaticFile(String type, Bytes content) {}

  /** Reads all. */
  StaticFiles() {
    for (String name : resource("files.txt").lines().map(String::strip).toList()) {
      if (!name.isEmpty()) {
        String path = name.equals("index.html") ? "/" : "/" + name;
        files.put(path, file(name));
      }
    }
    ArrayNode languages = Json.array();
    LANGUAGES.forEach(languages::add);
    files.put("/languages.json", json(languages.toString()));
    files.put("/shapes.json", json(shapes().toString()));
    LANGUAGES.forEach(l -> files.put("/words/" + l + ".json", json(words(l).toString())));
  }

  /** What lies at a path. */
  Optional<StaticFile> at(String path) {
    return Optional.ofNullable(files.get(path));
  }

  private static StaticFile file(String name) {
    String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
    if (type == null) {
      throw new IllegalStateException(name + ": no such kind of file on the page");
    }
    return new StaticFile(type, Bytes.of(resource(name)));
  }

  private static StaticFile json(String text) {
    return new StaticFile(JSON, Bytes.of(text));
  }

  /** The signs of the verdicts are those of the report. */
  private static ObjectNode shapes() {
    ObjectNode node = Json.object();
    VerdictShape.all()
        .forEach((verdict, shape) -> node.putArray(verdict).add(shape.form()).add(shape.sign()));
    return node;
  }

  private static ObjectNode words(String language) {
    Map<String, String> words = new TreeMap<>(properties("words.properties"));
    if (!language.equals(LANGUAGES.get(0))) {
      words.putAll(properties("words_" + language + ".properties"));
    }
    ObjectNode node = Json.object();
    words.forEach(node::put);
    return node;
  }

  private static Map<String, String> properties(String name) {
    Properties properties = new Properties();
    try (InputStream in = StaticFiles.class.getResourceAsStream(name)) {
      if (in != null) {
        properties.load(new InputStreamReader(in, StandardCharsets.UTF_8));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Map<String, String> words = new HashMap<>();
    properties.stringPropertyNames().forEach(key -> words.put(key, properties.getProperty(key)));
    return words;
  }

  private static String resource(String name) {
    try (@Nullable InputStream in = StaticFiles.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException(name + ": is missing in this program");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
