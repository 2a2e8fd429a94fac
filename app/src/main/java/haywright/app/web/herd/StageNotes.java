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
                    "Mud costs appetite beside warmth: in mud of 4 to 8 inches they are expected to eat %s less, in 12 to 24 inches %s less. A dry place to lie and to eat pays."
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
                        "Grass tetany: from calving until they are used to lush grass, keep 0.20 % magnesium in all they eat, and mineral and salt always before them. A cow that staggers or is down needs a veterinarian at once.");
            case VITAMIN_A ->
                Optional.of(
                        "Hay brings little vitamin A by now. Give it in the mineral from two months before calving until grass; a label that says less than the figure below, times what they eat, is not enough.");
            case TARGET ->
                group.animals() == AnimalClass.BRED_HEIFER
                        ? HeiferTarget.of(group, settings.system()).map(StageNotes::atCalving)
                        : Optional.of("Heifers that are kept should weigh about %s when they are bred."
                                .formatted(pounds(
                                        new HeiferTarget(group.matureWeight().base(), settings.system()).breeding())));
            case MATING ->
                Optional.of(
                        "A bull may lose 100 to 200 lb at work: have them in good flesh, not fat, when they go to the cows.");
        };
    }

    private static String firstWeeks(FirstWeeks weeks) {
        var eats = weeks.eatsLittle()
                ? "They eat only about %s of dry matter a day now, %s of their weight: put the best hay in it, and more protein and mineral in the pound than later. "
                        .formatted(pounds(weeks.kilograms()), Show.number(weeks.percent(), 2) + " %")
                : "By now they should be eating as the figures say. ";
        return "Day %d after weaning. %sGood long hay on top in the bunk and along the fence they walk, water that they can hear run; raise grain by a pound every third day at most, and go back a step when bunks are left full. Vitamin A %s IU a pound of dry matter, vitamin E %s IU a day. Calves that stand off or breathe hard: your veterinarian, today."
                .formatted(
                        weeks.day(),
                        eats,
                        Show.number(Unit.IU_PER_LB.fromBase(weeks.vitaminA()), 0),
                        Show.number(new VitaminE(weeks.bodyWeight(), true).units(), 0));
    }

    private static String atCalving(HeiferTarget.AtCalving at) {
        return at.weight() >= at.target()
                ? "At this gain they weigh about %s when calving begins on %s, without the calf; %s is wanted."
                        .formatted(pounds(at.weight()), Show.date(at.on()), pounds(at.target()))
                : "At this gain they weigh about %s when calving begins on %s, without the calf, and %s is wanted: from the weighing on that takes %s lb a day."
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
