package haywright.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names as people write them, and what comes of a name. */
class PlacesTest {
    private static final Places PLACES = Places.known();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Valentine, NE | Valentine, NE",
                "valentine nebraska | Valentine, NE",
                "VALENTINE,NEBR. | Valentine, NE",
                "Valentine, Cherry County, NE, USA | Valentine, NE",
                "Valentine, NE 69201 | Valentine, NE",
                "Cherry County, Nebraska | Cherry County, NE",
                "cherry co, ne | Cherry County, NE",
                "Cherry, NE | Cherry County, NE",
                "St Paul, Minn | St. Paul, MN",
                "Saint Paul MN | St. Paul, MN",
                "ft collins, colo. | Fort Collins, CO",
                "Fort Collins, CO | Fort Collins, CO",
                "Butte-Silver Bow, MT | Butte-Silver Bow, MT",
                "bozeman mt | Bozeman, MT",
                "Two Dot, Montana | Two Dot, MT",
                "cherry co | Cherry County, NE",
                "fort collins co | Fort Collins, CO",
                "Coeur dAlene ID | Coeur d'Alene, ID",
                "O'Neill, NE | O'Neill, NE",
                "Oneill NE | O'Neill, NE",
                "Utqiagvik, AK | Utqiaġvik, AK",
                "New York | New York, NY",
                "Belle Fourche South Dakota | Belle Fourche, SD",
                "Miles City, MT | Miles City, MT",
                "Broomfield County, CO | Broomfield County, CO",
                "Banff, Alberta | Banff Cs, AB",
                "Dillon 1 E, CO | Dillon 1 E, CO"
            })
    void aNameFindsOnePlace(String typed, String full) {
        assertThat(PLACES.full(PLACES.one("place", typed))).isEqualTo(full);
    }

    /** A name that is handed out finds its place again, whatever the place. */
    @Test
    void everyFullNameFindsItsPlace() {
        for (var town : PLACES.towns()) {
            var found = PLACES.find(PLACES.full(town)).places();
            assertThat(found).as(PLACES.full(town)).contains(town);
            assertThat(found.stream().map(Place::county).distinct()).hasSize(1);
        }
        for (var county : Climate.known().counties()) {
            assertThat(PLACES.find(PLACES.full(county)).places()).containsExactly(county);
        }
    }

    @Test
    void aNameOfSeveralPlacesIsAskedAbout() {
        var found = PLACES.find("Lincoln");
        assertThat(found.places()).hasSizeBetween(2, 8);
        assertThat(PLACES.choices(found)).contains("Lincoln, NE").doesNotHaveDuplicates();
        var inOneState = PLACES.find("Greenville, NY");
        assertThat(PLACES.choices(inOneState)).hasSize(2).allMatch(name -> name.contains(" County, NY"));
        for (var name : PLACES.choices(inOneState)) {
            assertThat(PLACES.find(name).places()).hasSize(1);
        }
        assertThatThrownBy(() -> PLACES.one("place", "Lincoln"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Lincoln, NE");
    }

    @Test
    void thoseThatHaveTheNameBesidesTheEightAreSaid() {
        var found = PLACES.find("Lincoln County");
        assertThat(found.places()).hasSize(8);
        long all = Climate.known().counties().stream()
                .filter(county -> county.name().equals("Lincoln County"))
                .count();
        assertThat(found.more()).isEqualTo((int) all - 8).isPositive();
        assertThatThrownBy(() -> PLACES.one("place", "Lincoln County"))
                .hasMessageContaining("and %d more: add the state".formatted(found.more()));
    }

    @Test
    void aTownOfAnotherStateIsHintedAt() {
        assertThat(PLACES.find("Bowman, WY").nearest().get(0)).isEqualTo("Bowman, ND");
    }

    @Test
    void whetherAStateWasNamedIsTold() {
        assertThat(PLACES.find("McHenry County").saysState()).isFalse();
        assertThat(PLACES.find("McHenry County, ND").saysState()).isTrue();
        assertThat(PLACES.find("valentine nebraska").saysState()).isTrue();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"Valentin, NE | Valentine, NE", "Bozemna MT | Bozeman, MT", "Chery County, NE | Cherry County, NE"
            })
    void anUnknownNameGetsTheNearestSpellings(String typed, String nearest) {
        var found = PLACES.find(typed);
        assertThat(found.places()).isEmpty();
        assertThat(found.nearest()).contains(nearest);
        assertThatThrownBy(() -> PLACES.one("place", typed)).hasMessageContaining(nearest);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "   ",
                ",",
                "NE",
                "69201",
                "\u0000",
                "!!!",
                "Amarillo, TX",
                "qqqqqqqqqqqqqqqqqqqqqq",
                "a,b,c,d,e"
            })
    void whatIsNoPlaceIsRefusedInWords(String typed) {
        assertThatThrownBy(() -> PLACES.one("place", typed)).isInstanceOf(Refused.class);
    }

    @Test
    void aStateOutsideTheTablesIsNamed() {
        assertThatThrownBy(() -> PLACES.one("place", "Amarillo, Texas")).hasMessageContaining("not TX");
    }

    /** Its airport's normals: 24.5 °F in January (NOAA, 1991 to 2020); a county of the plains lies near it. */
    @Test
    void theLevelIsTheNearestStations() {
        var valentine = Climate.known().at(PLACES.one("place", "Valentine, NE"), OptionalDouble.empty(), 0);
        assertThat(valentine.station().place().name()).isEqualTo("Valentine Miller Fld");
        assertThat(valentine.distance()).isBetween(0.1, 5.0);
        assertThat(valentine.monthly().get(0)).isEqualTo(-4.2);
        assertThat(valentine.countyJanuary().orElseThrow()).isCloseTo(-4.2, within(1.0));
        assertThat(valentine.winters()).hasSize(28);
        assertThat(valentine.winters().get(0).words()).isEqualTo("1990-91");
        var colder = Climate.known().at(valentine.place(), OptionalDouble.empty(), -2);
        var normals = colder.normals();
        assertThat(normals.mean(LocalDate.of(2027, 1, 15))).isCloseTo(-6.2, within(1e-9));
        for (int i = 0; i < 28; i++) {
            assertThat(colder.winters().get(i).coldestWeek())
                    .isCloseTo(valentine.winters().get(i).coldestWeek() - 2, within(1e-9));
        }
    }

    /** The height of a place decides between a station in its valley and one on the ridge above. */
    @Test
    void heightCountsWhereItIsKnown() {
        var dillon = PLACES.one("place", "Frisco, CO");
        var low = Climate.known().at(dillon, OptionalDouble.of(1500), 0).station();
        var high = Climate.known().at(dillon, OptionalDouble.of(2770), 0).station();
        assertThat(high.place().height().orElseThrow()).isGreaterThan(2400);
        assertThat(low.place().height().orElseThrow()).isLessThan(2200);
    }

    /** No division there: the sampled station's own months stand in; too far from any, there are no winters. */
    @Test
    void canadaAndAlaskaHaveNormals() {
        var estevan = Climate.known().at(PLACES.one("place", "Estevan, SK"), OptionalDouble.empty(), 0);
        assertThat(estevan.distance()).isZero();
        assertThat(estevan.winters()).hasSize(28);
        var fairbanks = Climate.known().at(PLACES.one("place", "Fairbanks, AK"), OptionalDouble.empty(), 0);
        assertThat(fairbanks.monthly().get(0)).isLessThan(-15);
        assertThat(fairbanks.winters()).isEmpty();
        assertThat(fairbanks.shape()).isEmpty();
        assertThat(fairbanks.normals().week(LocalDate.of(2027, 1, 4)))
                .hasSize(7)
                .isSorted();
    }
}
