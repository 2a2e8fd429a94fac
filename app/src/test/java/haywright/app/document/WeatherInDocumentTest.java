package haywright.app.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Hide;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FoundPlace;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.weather.Normals;
import haywright.weather.Station;
import haywright.weather.StationWinters;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Thirty winters in a document: the same on another machine, small, and apart from the settings. */
class WeatherInDocumentTest {
    private static final int MOST_BYTES = 60_000;

    private final RanchDocument documents = new RanchDocument();

    private static Ranch ranch() {
        var station = Station.fortCollins();
        var normals = Normals.of(station);
        return TinLantern.ranch()
                .withWeather(
                        new RanchWeather(
                                station.name(),
                                normals.monthly().stream()
                                        .map(mean -> Quantity.of(mean, Unit.CELSIUS))
                                        .toList(),
                                Quantity.of(8, Unit.MILE_AN_HOUR),
                                Coat.WINTER,
                                true,
                                ColdSystem.HEAT_BALANCE,
                                Hide.SOME_MUD,
                                normals.departures(),
                                null),
                        StationWinters.of(station));
    }

    @Test
    void itComesBackTheSameAndIsSmall() {
        var written = documents.write(ranch()).getBytes(StandardCharsets.UTF_8);
        assertThat(documents.read(written)).isEqualTo(ranch());
        int without = documents.write(TinLantern.ranch()).getBytes(StandardCharsets.UTF_8).length;
        assertThat(written.length - without).isLessThan(MOST_BYTES);
    }

    @Test
    void anEditOfTheSettingsDoesNotCarryTheWintersIntoTheHistory() {
        var ranch = ranch();
        var changed = ranch.with(ranch.settings().withHerdFactor(1.2));
        assertThat(Patch.between(ranch, changed).paths()).containsExactly("settings");
        assertThat(Patch.between(ranch, changed).json().length()).isLessThan(5000);
    }

    /** A place is its name: its months and winters are worked out from it, on another machine too. */
    @Test
    void aPlaceIsKeptByItsName() {
        var found = FoundPlace.of("valentine nebraska", Quantity.of(2600, Unit.FOOT), -1.5);
        var ranch = TinLantern.ranch()
                .withWeather(
                        new RanchWeather(
                                found.place(),
                                List.of(),
                                Quantity.of(8, Unit.MILE_AN_HOUR),
                                Coat.WINTER,
                                true,
                                ColdSystem.HEAT_BALANCE,
                                null,
                                List.of(),
                                found),
                        null);
        var tree = documents.tree(ranch);
        assertThat(tree.at("/settings/weather/found/place").asText()).isEqualTo("Valentine, NE");
        assertThat(tree.at("/settings/weather/found/typed").asText()).isEqualTo("valentine nebraska");
        assertThat(tree.at("/settings/weather").toString().length()).isLessThan(400);
        var read = documents.ranch(tree);
        assertThat(read).isEqualTo(ranch);
        assertThat(read.knownWinters()).hasSize(28).isEqualTo(ranch.knownWinters());
        ((ObjectNode) tree.at("/settings/weather/found")).put("place", "Valentin, NE");
        assertThatThrownBy(() -> documents.ranch(tree)).hasMessageContaining("Valentine, NE");
    }

    /** Format 2 wrote a box that nobody had ticked as a windbreak denied; with a wind that somebody said, it was answered. */
    @Test
    void aWindbreakThatNobodyDeniedIsNotSaid() {
        var tree = documents.tree(ranch());
        tree.put("format", 2);
        var weather = (ObjectNode) tree.at("/settings/weather");
        weather.put("windbreak", false);
        var answered = documents.read(tree.toString().getBytes(StandardCharsets.UTF_8));
        assertThat(answered.settings().weather()).isNotNull();
        assertThat(answered.settings().weather().windbreak()).isFalse();
        weather.remove("wind");
        var open = documents.read(tree.toString().getBytes(StandardCharsets.UTF_8));
        assertThat(open.settings().weather()).isNotNull();
        assertThat(open.settings().weather().windbreak()).isNull();
        weather.put("windbreak", true);
        var sheltered = documents.read(tree.toString().getBytes(StandardCharsets.UTF_8));
        assertThat(sheltered.settings().weather()).isNotNull();
        assertThat(sheltered.settings().weather().windbreak()).isTrue();
    }

    /** As it was written before a record could be read in. */
    @Test
    void monthlyMeansOfAnOlderDocumentStillOpen() {
        var typed = new RanchWeather(
                "the ranch",
                Collections.nCopies(12, Quantity.of(40, Unit.FAHRENHEIT)),
                Quantity.of(8, Unit.MILE_AN_HOUR),
                Coat.WINTER,
                false,
                ColdSystem.RULE_OF_THUMB,
                null,
                List.of(),
                null);
        var tree = documents.tree(TinLantern.ranch().withWeather(typed, null));
        ((ObjectNode) tree.at("/settings/weather")).remove(List.of("departures", "hide", "found"));
        tree.remove("winters");
        var read = documents.ranch(tree);
        assertThat(read.settings().weather()).isEqualTo(typed);
        assertThat(read.winters()).isNull();
        assertThat(typed.coats()).isEqualTo(Hide.DRY);
    }
}
