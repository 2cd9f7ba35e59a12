package org.thumbseal.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.grade.Verdict;
import org.thumbseal.json.JsonGate;
import tools.jackson.databind.node.ObjectNode;

class StaticFilesTest {
  private final StaticFiles files = new StaticFiles();

  @Test
  void everyVerdictHasAShapeOfItsOwn() throws Exception {
    ByteArrayOutputStream shapes = new ByteArrayOutputStream();
    files.at("/shapes.json").orElseThrow().content().writeTo(shapes);
    ObjectNode tree = JsonGate.read(shapes.toByteArray());
    List<String> drawn =
        Stream.of(Verdict.values()).map(verdict -> tree.path(verdict.code()).toString()).toList();
    assertThat(drawn).doesNotHaveDuplicates().allMatch(shape -> shape.startsWith("[\"M"));
  }

  /** What is left out is said in English; nothing of ours is. */
  @ParameterizedTest
  @ValueSource(strings = {"fr", "pt", "sw"})
  void everyLanguageSaysEverything(String language) throws Exception {
    assertThat(words("words_" + language + ".properties").stringPropertyNames())
        .containsExactlyInAnyOrderElementsOf(words("words.properties").stringPropertyNames());
  }

  private static Properties words(String name) throws Exception {
    Properties words = new Properties();
    try (InputStream in = StaticFiles.class.getResourceAsStream(name)) {
      words.load(new InputStreamReader(in, StandardCharsets.UTF_8));
    }
    return words;
  }
}
