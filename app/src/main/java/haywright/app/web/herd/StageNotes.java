package haywright.app.web.herd;

import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.cold.Mud;
import haywright.cattle.herd.Group;
import haywright.cattle.intake.FirstWeeks;
import haywright.cattle.need.HeiferTarget;
import haywright.cattle.need.VitaminE;
import haywright.cattle.need.Watch;
import haywright.quantity.Unit;
import haywright.ranch.Settings;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What to watch in a group at a stage, in words. */
public final class StageNotes {
    private StageNotes() {}

    /** @param source and how it is known */
    public record Note(String words, String source) {}

    static List<Note> of(Settings settings, Group group, LocalDate day) {
        var turnout = group.turnout() == null ? settings.turnout() : group.turnout();
        var notes = new ArrayList<Note>();
        for (var watch : Watch.of(group, day, turnout)) {
            words(watch, settings, group, day)
                    .ifPresent(words -> notes.add(new Note(
                            words,
                            watch.source().cite() + " ("
                                    + watch.source().known().words() + ")")));
        }
        var noLoss = Thin.noLoss(group, day).strip();
        if (!noLoss.isEmpty()) {
            notes.add(new Note(noLoss, "common practice, no source"));
        }
        var weather = settings.weather();
        if (weather != null && weather.coats().left() < 1) {
            notes.add(new Note(
                    "Mud costs appetite and warmth: in 4 to 8 inches they eat %s less, in 12 to 24 inches %s less. Give them a dry place to bed and eat."
                            .formatted(less(Mud.HOOF_DEEP), less(Mud.KNEE_DEEP)),
                    Mud.SOURCE.cite() + " (" + Mud.SOURCE.known().words() + ")"));
        }
        return notes;
    }

    private static String less(Mud mud) {
        return Show.number(100 * (1 - mud.factor()), 0) + " %";
    }

    private static Optional<String> words(Watch watch, Settings settings, Group group, LocalDate day) {
        return switch (watch) {
            case FIRST_WEEKS ->
                Optional.ofNullable(Watch.firstWeeks(group, day)).map(StageNotes::firstWeeks);
            case MAGNESIUM ->
                Optional.of(
                        "Grass tetany: from calving until they are used to lush grass, feed 0.20 % magnesium and keep mineral and salt out. A cow that staggers or is down: call your veterinarian at once.");
            case VITAMIN_A ->
                Optional.of(
                        "Hay has little vitamin A left. Give it in the mineral from two months before calving to turnout; check the label against the figure below, times what they eat.");
            case TARGET ->
                group.animals() == AnimalClass.BRED_HEIFER
                        ? HeiferTarget.of(group, settings.system()).map(StageNotes::atCalving)
                        : Optional.of("Replacement heifers should weigh about %s at breeding."
                                .formatted(pounds(
                                        new HeiferTarget(group.matureWeight().base(), settings.system()).breeding())));
            case MATING ->
                Optional.of("A bull can lose 100 to 200 lb breeding: turn him out in good condition, not fat.");
        };
    }

    private static String firstWeeks(FirstWeeks weeks) {
        var eats = weeks.eatsLittle()
                ? "They eat only about %s of dry matter per day now, %s of body weight: feed your best hay, richer in protein and mineral than later. "
                        .formatted(pounds(weeks.kilograms()), Show.number(weeks.percent(), 2) + " %")
                : "By now they should eat as figured. ";
        return "Day %d after weaning. %sPut good long hay on top in the bunk and along the fence they walk; let water run where they hear it. Raise grain a pound every third day at most; step back if bunks stay full. Vitamin A %s IU per pound of dry matter, vitamin E %s IU per day. Calves that stand off or breathe hard: call your veterinarian today."
                .formatted(
                        weeks.day(),
                        eats,
                        Show.number(Unit.IU_PER_LB.fromBase(weeks.vitaminA()), 0),
                        Show.number(new VitaminE(weeks.bodyWeight(), true).units(), 0));
    }

    private static String atCalving(HeiferTarget.AtCalving at) {
        return at.weight() >= at.target()
                ? "At this gain they weigh about %s when calving starts on %s, without the calf; the target is %s."
                        .formatted(pounds(at.weight()), Show.date(at.on()), pounds(at.target()))
                : "At this gain they weigh about %s when calving starts on %s, without the calf; the target is %s, which takes %s lb a day."
                        .formatted(
                                pounds(at.weight()),
                                Show.date(at.on()),
                                pounds(at.target()),
                                Show.number(Unit.POUND.fromBase(at.gain()), 1));
    }

    private static String pounds(double kg) {
        return Show.pounds(kg);
    }
}
