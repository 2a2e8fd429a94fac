package haywright.season.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.season.given.Forecast;
import haywright.season.given.Season;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** When a lot ends another takes its place, kilogram of dry matter for kilogram, and is put out once. */
class NextOfItsKindTest {
    /** 100 cows at 32 lb are 3,200 lb a day, 11.2 tons a week; 20 tons end in the second week. */
    private static final double A_WEEK = 100 * 32 * 7 / 2000.0;

    @Test
    void asMuchIsPutOutAfterALotHasEndedAsBefore() {
        var ranch = Invented.ranch(20, 0).withoutGroup(new UUID(1, 2));
        var season = Season.of(new Yard(ranch, Invented.DAY));
        var forecast = new Forecast(season, -1);
        var played = new Judge(season).play(Truth.expected(season, 3), forecast, new RanchsOwn(season, forecast));
        for (int week = 0; week < 6; week++) {
            double dry = 0;
            for (int f = 0; f < season.feeds().size(); f++) {
                var feed = season.feeds().get(f);
                dry += feed.isForage()
                        ? played.weeks().get(week).fedKg()[f] * feed.priced().dryMatterPercent() / 100
                        : 0;
            }
            double hay = season.feeds().get(0).priced().dryMatterPercent() / 100;
            assertThat(Unit.TON.fromBase(dry / hay)).as("week " + week).isCloseTo(A_WEEK, within(0.01));
        }
        assertThat(played.open()).isZero();
        assertThat(played.emergencyKg()).isPositive();
    }
}
