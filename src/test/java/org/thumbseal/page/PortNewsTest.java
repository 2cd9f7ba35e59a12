package org.thumbseal.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.thumbseal.daemon.PortState;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.sample.StreamEvent.Sample;
import org.thumbseal.visit.Visit;

/** What befalls while another page is welcomed must still reach those that look already. */
class PortNewsTest {
  private final LivePort port = new LivePort("sim:sound", GradingSettings.DEFAULT);
  private final PortNews news = new PortNews(port);

  private List<String> changes() {
    return news.since(true).stream()
        .map(event -> new String(event, StandardCharsets.UTF_8))
        .toList();
  }

  @Test
  void aPageThatJoinsTakesNoChangeFromTheOthers() {
    news.since(true);
    port.link(PortState.STREAMING);
    port.visit(new Visit(Optional.of("SP-014"), List.of()), Optional.empty());

    assertThat(news.whole().path("link").asString()).isEqualTo("absent");
    assertThat(changes()).singleElement().asString().contains("streaming").contains("SP-014");
    assertThat(news.whole().path("link").asString()).isEqualTo("streaming");
    assertThat(changes()).isEmpty();
  }

  @Test
  void norAnyPointOfTheCurve() {
    news.since(true);
    port.reading(new Sample(1, 2, -3_000));

    assertThat(news.whole().path("curve").size()).isZero();
    assertThat(changes().get(0)).startsWith("event: points").contains("[1,3]");
    assertThat(news.whole().path("curve").toString()).isEqualTo("[[1,3]]");
  }
}
