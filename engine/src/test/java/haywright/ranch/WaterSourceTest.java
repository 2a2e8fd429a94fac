package haywright.ranch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.forage.hazard.HazardClass.Hazard;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class WaterSourceTest {
    private static WaterSource water(
            @Nullable Double solids, @Nullable Double sulfate, @Nullable Double nitrate, boolean asNitrogen) {
        return new WaterSource(
                new UUID(0, 1), "creek", "", null, mg(solids), mg(sulfate), mg(nitrate), asNitrogen, null, false);
    }

    private static @Nullable Quantity mg(@Nullable Double value) {
        return value == null ? null : Quantity.of(value, Unit.MILLIGRAM_PER_LITER);
    }

    // 4.43 between nitrate nitrogen and nitrate: crop file 5.03.011, printed to two decimals.
    @Test
    void nitrateNitrogenIsCarriedToNitrate() {
        assertThat(water(null, null, 10.0, true).found().get(Hazard.NO3W)).isCloseTo(44.3, within(0.05));
        assertThat(water(null, null, 10.0, false).found()).containsEntry(Hazard.NO3W, 10.0);
    }

    // SO4 is 2.996 of its sulfur, by molar mass: 402 mg/L of sulfate-sulfur is 1,204 of sulfate, with a pencil.
    @Test
    void sulfateSulfurIsCarriedToSulfate() {
        var tank = new WaterSource(new UUID(0, 1), "tank", "", null, mg(2410.0), mg(402.0), null, false, null, true);
        assertThat(tank.found().get(Hazard.SO4W)).isCloseTo(1204, within(1.0));
        assertThatThrownBy(() -> new WaterSource(
                        new UUID(0, 1), "tank", "", null, mg(1000.0), mg(402.0), null, false, null, true))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("part of the dissolved solids");
    }

    // As laboratories print them: 1.42 mmhos/cm is 1,420 µmho/cm, 0.94 g/L is 940 mg/L.
    @Test
    void unitsOfWaterReports() {
        assertThat(Unit.parse("mmhos/cm", Kind.CONDUCTIVITY).orElseThrow().toBase(1.42))
                .isCloseTo(1420, within(1e-9));
        assertThat(Unit.parse("µmhos/cm", Kind.CONDUCTIVITY)).contains(Unit.MICROMHO_PER_CM);
        assertThat(Unit.parse("g/L", Kind.WATER_CONCENTRATION).orElseThrow().toBase(0.94))
                .isCloseTo(940, within(1e-9));
    }

    @Test
    void whatWasNotTestedIsNotThere() {
        assertThat(water(null, 800.0, null, false).found()).containsOnlyKeys(Hazard.SO4W);
    }

    @Test
    void sulfateAboveAllSolidsIsRefusedInWords() {
        assertThatThrownBy(() -> water(900.0, 1200.0, null, false))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("sulfate is part of the dissolved solids");
        assertThatThrownBy(() -> water(-1.0, null, null, false)).isInstanceOf(Refused.class);
    }

    // 5 mS/cm · 0.64 = 3,200 mg/L (crop file 5.03.011); what was weighed counts before what was estimated.
    @Test
    void conductivityStandsInForSolids() {
        var conducts = Quantity.of(5, Unit.parse("mS/cm", Kind.CONDUCTIVITY).orElseThrow());
        var untested = new WaterSource(new UUID(0, 1), "creek", "", null, null, null, null, false, conducts, false);
        assertThat(untested.found().get(Hazard.TDS)).isCloseTo(3200, within(1e-9));
        var tested = new WaterSource(new UUID(0, 1), "creek", "", null, mg(900.0), null, null, false, conducts, false);
        assertThat(tested.found()).containsEntry(Hazard.TDS, 900.0);
        assertThatThrownBy(() -> new WaterSource(
                        new UUID(0, 1),
                        "creek",
                        "",
                        null,
                        null,
                        null,
                        null,
                        false,
                        Quantity.of(2000, Unit.MILLIMHO_PER_CM),
                        false))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("stock water conducts");
    }
}
