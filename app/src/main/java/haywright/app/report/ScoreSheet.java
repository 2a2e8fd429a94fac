package haywright.app.report;

import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.herd.ConditionScores;
import haywright.cattle.herd.Group;
import haywright.ranch.Ranch;
import haywright.ranch.SheetCode;
import java.time.LocalDate;
import java.util.Collections;
import java.util.Optional;

/** What goes to the chute or the pen: how many of a group to score, with boxes, and the thin and young ones apart. */
public record ScoreSheet(Ranch ranch, Group group, LocalDate made) {
    private static final double POINTS = 10.5;
    /** On the line that goes back a score is a whole number. */
    public static final int TENTHS = 10;

    private static final int FIRST_DAYS = 90;
    private static final int LAST_DAYS = 60;

    public int toScore() {
        return ConditionScores.toScore(group.head());
    }

    /** The first calving less 90 to 60 days: late enough to tell, early enough to mend. Empty where none is known. */
    public String when() {
        return firstCalf()
                .map(first -> "Best from %s to %s, 90 to 60 days before the first calf, in time to feed the thin ones."
                        .formatted(Show.date(first.minusDays(FIRST_DAYS)), Show.date(first.minusDays(LAST_DAYS))))
                .orElse("");
    }

    private Optional<LocalDate> firstCalf() {
        return group.calving().stream().map(Group.CalvingWeek::begins).min(LocalDate::compareTo);
    }

    /** Cows are wanted at 5 and heifers at 6 when they calve: common practice, and the sort is the rancher's. */
    public double thinBelow() {
        return group.animals() == AnimalClass.FIRST_CALF_HEIFER || group.animals() == AnimalClass.BRED_HEIFER ? 6 : 5;
    }

    public String thin() {
        return Show.significant(thinBelow(), 2);
    }

    public String now() {
        return Show.significant(group.conditionScore(), 3);
    }

    public String day() {
        return Show.date(made);
    }

    public String code() {
        return SheetCode.ofScores(group);
    }

    /** The same sheet as one file for a phone; the thin and young ones are written on the paper. */
    public String phonePage() {
        return new PhoneCounts(
                        "Score " + group.name(),
                        code(),
                        ranch.name() + " · made " + day(),
                        "Score %d of %d as they walk by; don’t pick out the thin ones."
                                .formatted(toScore(), group.head()),
                        "score",
                        TENTHS,
                        Collections.nCopies(toScore(), ""),
                        "1 to 9, halves allowed. At the chute keep hands and head out of the gate. Write down tags below %s, and of young ones."
                                .formatted(thin()))
                .page();
    }

    public Paper paper(Paper.Size size) {
        return Paper.of(
                "Score sheet, " + group.name(),
                "Boxes for the condition scores of %s, thin and young ones separate".formatted(group.name()),
                "haywright/app/report/scoreSheet.jte",
                this,
                size,
                POINTS,
                made);
    }
}
