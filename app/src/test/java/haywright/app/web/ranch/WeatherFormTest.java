package haywright.app.web.ranch;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.web.Form;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Hide;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.RanchWeather;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A form sent as it was shown says nothing that nobody had said. */
class WeatherFormTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private static RanchWeather sentAsShown(RanchWeather weather) {
        var posted = new LinkedHashMap<String, List<String>>();
        WeatherForm.known(weather).forEach((name, value) -> posted.put(name, List.of(value)));
        var form = Form.posted("settings/weather", posted);
        var read = WeatherForm.read(form, weather, TODAY);
        assertThat(form.messages()).isEmpty();
        return read.orElseThrow();
    }

    @Test
    void whatIsOpenStaysOpenAndWhatIsSaidStaysSaid() {
        var months = IntStream.of(14, 19, 30, 43, 53, 62, 69, 67, 57, 44, 29, 18)
                .mapToObj(mean -> Quantity.of(mean, Unit.FAHRENHEIT))
                .toList();
        var open = new RanchWeather("Cold Spring", months, null, null, null, ColdSystem.USUAL, null, List.of(), null);
        assertThat(sentAsShown(open)).isEqualTo(open);
        for (var hide : Hide.values()) {
            var said = new RanchWeather(
                    "Cold Spring",
                    months,
                    Quantity.of(12, Unit.MILE_AN_HOUR),
                    Coat.WINTER,
                    false,
                    ColdSystem.HEAT_BALANCE,
                    hide,
                    List.of(),
                    null);
            assertThat(sentAsShown(said)).isEqualTo(said);
        }
    }
}
