package haywright.app.web.ranch;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.web.Findings;
import haywright.app.web.Form;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Outfit;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.NullSource;
import org.junit.jupiter.params.provider.ValueSource;

class OutfitFormTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private static Form form(Map<String, String> typed) {
        var posted = new LinkedHashMap<String, List<String>>();
        typed.forEach((name, value) -> posted.put(name, List.of(value)));
        return Form.posted("outfit", posted);
    }

    private static Optional<Outfit> read(Form form) {
        return SettingsForms.OUTFIT.read(form, Map.of(), Outfit.NOT_SAID, TODAY);
    }

    /** Not said stays not said: it is never taken for a wagon, nor for none. */
    @ParameterizedTest
    @NullSource
    @ValueSource(booleans = {true, false})
    void comesBackAsItIs(@Nullable Boolean mixer) {
        var outfit = new Outfit(mixer, Quantity.of(9000, Unit.POUND), true, false, Quantity.of(120, Unit.FOOT), 2);
        assertThat(read(form(SettingsForms.OUTFIT.known(outfit)))).contains(outfit);
        assertThat(read(form(SettingsForms.OUTFIT.known(Outfit.NOT_SAID)))).contains(Outfit.NOT_SAID);
    }

    @ParameterizedTest
    @CsvSource({"mixer, perhaps", "mixerHolds, 3 ft", "bunk, 900 lb", "timesADay, ''", "timesADay, 9", "timesADay, 1.5"
    })
    void refusesBesideTheBox(String field, String value) {
        var typed = new LinkedHashMap<>(Map.of("timesADay", "1"));
        typed.put(field, value);
        var form = form(typed);
        assertThat(read(form)).isEmpty();
        assertThat(form.messages()).extracting(Findings.Message::field).containsExactly(field);
    }

    @Test
    void aTickThatIsNotSentIsANo() {
        assertThat(read(form(Map.of("timesADay", "1"))).orElseThrow().scale()).isFalse();
        assertThat(read(form(Map.of("timesADay", "1", "scale", "yes")))
                        .orElseThrow()
                        .scale())
                .isTrue();
    }
}
