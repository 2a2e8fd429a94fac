package haywright.app.web.herd;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.RanchDocument;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.words.HerdWords;
import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GroupFormTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    private static final LocalDate MARCH_15 = LocalDate.of(2027, 3, 15);

    /** Two hundred cows that stand to reason. */
    private static Map<String, String> cows() {
        var typed = new LinkedHashMap<String, String>();
        typed.put("name", "Old cows");
        typed.put("head", "200");
        typed.put("breed", "Angus");
        typed.put("cross", "Hereford");
        typed.put("weight", "1,280 lb");
        typed.put("shrunk", "no");
        typed.put("weighedOn", "Nov 10, 2026");
        typed.put("matureWeight", "1280");
        typed.put("conditionScore", "5");
        typed.put("calving1begins", "Mar 15, 2027");
        typed.put("calving1head", "90");
        typed.put("calving2head", "110");
        typed.put("weaning", "Oct 10, 2027");
        return typed;
    }

    private static Map<String, String> cows(String field, String value) {
        var typed = cows();
        typed.put(field, value);
        return typed;
    }

    private static Form form(Map<String, String> typed) {
        var posted = new LinkedHashMap<String, List<String>>();
        typed.forEach((name, value) -> posted.put(name, List.of(value)));
        return Form.posted("group/new", posted);
    }

    private static Optional<Group> read(Form form, @Nullable Group before) {
        return GroupForm.read(form, AnimalClass.MATURE_COW, new UUID(1, 2), before, null, TODAY);
    }

    private static List<String> wrong(Form form) {
        var fields = new ArrayList<String>();
        form.messages().forEach(message -> fields.add(message.field()));
        return fields;
    }

    @Test
    void readsAGroupAsTyped() {
        var group = read(form(cows()), null).orElseThrow();
        assertThat(group.weight()).isEqualTo(Quantity.of(1280, Unit.POUND));
        assertThat(group.breed()).isEqualTo("Angus x Hereford");
        assertThat(group.shrunk()).isFalse();
        assertThat(group.gain()).isEqualTo(Quantity.of(0, Unit.POUND_A_DAY));
    }

    /** A row without its date is the week after the one before. */
    @Test
    void countsWeeksOnFromTheDateBefore() {
        var group = read(form(cows()), null).orElseThrow();
        assertThat(group.calving())
                .containsExactly(new CalvingWeek(MARCH_15, 90), new CalvingWeek(MARCH_15.plusDays(7), 110));
    }

    @Test
    void readsAListOfCountsAsTheSameWeeks() {
        var typed = cows();
        typed.keySet().removeIf(name -> name.startsWith("calving"));
        typed.put("calvingFrom", "3/15/2027");
        typed.put("calvingCounts", "90, 0; 110");
        assertThat(read(form(typed), null).orElseThrow().calving())
                .containsExactly(new CalvingWeek(MARCH_15, 90), new CalvingWeek(MARCH_15.plusDays(14), 110));
    }

    private static Map<String, String> due(String first, String weeks, String bred) {
        var typed = cows();
        typed.keySet().removeIf(name -> name.startsWith("calving"));
        typed.put("calvingFirst", first);
        typed.put("calvingWeeks", weeks);
        typed.put("inCalfNow", bred);
        return typed;
    }

    /** Nine weeks are three times three: 0.6, 0.24 and 0.096 of all bred, each the same in its three weeks. */
    @Test
    void calvesByFirstDateAndWeeks() {
        var group = read(form(due("Mar 15", "9", "")), null).orElseThrow();
        assertThat(group.calving().get(0).begins()).isEqualTo(MARCH_15);
        assertThat(group.calving()).hasSize(9);
        assertThat(group.calving().stream().mapToInt(CalvingWeek::head).sum()).isEqualTo(200);
        int firstThree =
                group.calving().stream().limit(3).mapToInt(CalvingWeek::head).sum();
        assertThat(firstThree).isBetween(127, 129); // 200 · 0.6 / 0.936 = 128.2
        assertThat(GroupForm.known(group)).containsEntry("calvingWeeks", "9").doesNotContainKey("calving1begins");
        assertThat(read(form(GroupForm.known(group)), group)).contains(group);
    }

    @Test
    void leavesTheOpenOnesOut() {
        var group = read(form(due("3/15/2027", "6", "188")), null).orElseThrow();
        assertThat(group.head()).isEqualTo(200);
        assertThat(group.calving().stream().mapToInt(CalvingWeek::head).sum()).isEqualTo(188);
        assertThat(read(form(GroupForm.known(group)), group)).contains(group);
    }

    /** Bulls in for three cycles of 21 days: common practice, no source. */
    @Test
    void weeksLeftEmptyAreNineAndSaid() {
        var form = form(due("Mar 15", "", ""));
        var group = read(form, null).orElseThrow();
        assertThat(group.calving())
                .isEqualTo(
                        read(form(due("Mar 15", "9", "")), null).orElseThrow().calving());
        assertThat(GroupForm.taken(form, group)).contains("9 weeks of calving");
    }

    @ParameterizedTest(name = "{0}, {1} weeks")
    @CsvSource({"'', 9, calvingFirst", "Mar 15, 0, calvingWeeks", "Mar 35, 9, calvingFirst"})
    void refusesHalfASeason(String first, String weeks, String field) {
        var form = form(due(first, weeks, ""));
        assertThat(read(form, null)).isEmpty();
        assertThat(wrong(form)).contains(field);
    }

    /** A weighing is past, a due date is to come, whichever side of New Year today is. */
    @Test
    void understandsDatesWithoutTheirYear() {
        var typed = due("2/20", "3", "");
        typed.put("weighedOn", "Nov 10");
        typed.put("weaning", "Oct 10");
        typed.put("turnout", "May 15");
        var group = read(form(typed), null).orElseThrow();
        assertThat(group.weighedOn()).isEqualTo(LocalDate.of(2026, 11, 10));
        assertThat(group.calving().get(0).begins()).isEqualTo(LocalDate.of(2027, 2, 20));
        assertThat(group.turnout()).isEqualTo(LocalDate.of(2027, 5, 15));
    }

    /** Score 4 over score 5 is (0.078982 − 0.0219) / (0.078982 − 0.01752) = 0.9287 (NRC 2000, energy reserves). */
    @Test
    void takesWeightAtScoreFiveFromWeightAndScore() {
        var typed = cows("matureWeight", "");
        typed.put("weight", "1200 lb");
        typed.put("conditionScore", "4");
        assertThat(read(form(typed), null).orElseThrow().matureWeight()).isEqualTo(Quantity.of(1292, Unit.POUND));
    }

    private static Map<String, String> heifers() {
        var typed = due("Mar 1", "6", "");
        typed.put("head", "50");
        typed.put("weight", "950 lb");
        typed.put("weighedOn", "Nov 21, 2026");
        typed.put("matureWeight", "");
        typed.put("gain", "");
        typed.remove("weaning");
        return typed;
    }

    /** 0.80 of 1,300 lb is 1,040 lb: 90 lb in the 100 days to March 1 is 0.9 lb a day. */
    @Test
    void proposesTheGainThatHeifersCalveBy() {
        var cows = Quantity.of(1300, Unit.POUND);
        var typed = heifers();
        var asked = form(typed);
        assertThat(GroupForm.read(asked, AnimalClass.BRED_HEIFER, new UUID(1, 3), null, cows, TODAY))
                .isEmpty();
        assertThat(wrong(asked)).contains("gain", "matureWeight");
        // both are asked at once: the date they calve is not taken for missing because something else is asked
        assertThat(asked.doubts(GroupForm.GAIN.ask())).hasSize(1);
        var sure = new LinkedHashMap<String, List<String>>();
        typed.forEach((name, value) -> sure.put(name, List.of(value)));
        sure.put("confirm", List.of("gain-proposed", "mature-as-cows"));
        var group = GroupForm.read(
                        Form.posted("group/new", sure), AnimalClass.BRED_HEIFER, new UUID(1, 3), null, cows, TODAY)
                .orElseThrow();
        assertThat(group.gain()).isEqualTo(Quantity.of(0.9, Unit.POUND_A_DAY));
        assertThat(group.matureWeight()).isEqualTo(cows);
        // it stays said as assumed, in the document and in the box, until somebody enters one
        assertThat(group.gainTaken()).isTrue();
        assertThat(GroupForm.known(group)).containsEntry("gain", "");
        assertThat(HerdWords.gain(group)).contains("0.9", "assumed");
        assertThat(new RanchDocument()
                        .read(new RanchDocument()
                                .write(Ranch.empty(new UUID(1, 1), "Ranch").with(group))
                                .getBytes(UTF_8))
                        .groups()
                        .get(group.id()))
                .isEqualTo(group);
        sure.put("gain", List.of("0.9 lb"));
        var entered = GroupForm.read(
                        Form.posted("group/new", sure), AnimalClass.BRED_HEIFER, new UUID(1, 3), group, cows, TODAY)
                .orElseThrow();
        assertThat(entered.gainTaken()).isFalse();
        assertThat(HerdWords.gain(entered)).doesNotContain("assumed");
        assertThat(entered.gain()).isEqualTo(group.gain());
    }

    private static Group confirmed(AnimalClass animals, Map<String, String> typed) {
        var sure = new LinkedHashMap<String, List<String>>();
        typed.forEach((name, value) -> sure.put(name, List.of(value)));
        sure.put("confirm", List.of("gain-proposed"));
        return GroupForm.read(Form.posted("group/new", sure), animals, new UUID(1, 3), null, null, TODAY)
                .orElseThrow();
    }

    /** 1.5 lb a day for calves (Nebraska G2064); grown bulls hold; heifers with a calf grow to 0.92 of their mature weight. */
    @Test
    void whatIsProposedIsAGainForWhatGrowsAndNoneForWhatIsGrown() {
        var calves = heifers();
        calves.keySet().removeIf(name -> name.startsWith("calv"));
        calves.put("weight", "520 lb");
        calves.put("matureWeight", "1300 lb");
        var asked = form(calves);
        assertThat(GroupForm.read(asked, AnimalClass.GROWING, new UUID(1, 3), null, null, TODAY))
                .isEmpty();
        assertThat(wrong(asked)).containsExactly("gain");
        assertThat(confirmed(AnimalClass.GROWING, calves).gain()).isEqualTo(Quantity.of(1.5, Unit.POUND_A_DAY));
        var bulls = new LinkedHashMap<>(calves);
        bulls.put("weight", "1,900 lb");
        bulls.put("matureWeight", "1,900 lb");
        assertThat(confirmed(AnimalClass.BULL, bulls).gain()).isEqualTo(Quantity.of(0, Unit.POUND_A_DAY));
        // 0.92 of 1,300 lb is 1,196 lb: 246 lb in the 100 days to March 1 is 2.46, in steps of 0.05
        var second = heifers();
        second.put("matureWeight", "1300 lb");
        var ask = form(second);
        GroupForm.read(ask, AnimalClass.FIRST_CALF_HEIFER, new UUID(1, 3), null, null, TODAY);
        assertThat(ask.messages().toString()).contains("2.5 lb");
    }

    /** A calving of an earlier year is asked about beside its box. */
    @Test
    void aCalvingYearFarInThePastIsAsked() {
        var typed = due("Mar 15, 2019", "6", "");
        typed.remove("weaning");
        var form = form(typed);
        assertThat(read(form, null)).isEmpty();
        assertThat(wrong(form)).containsExactly("calvingFirst");
        assertThat(form.doubts(Ask.date("calvingFirst", "", ""))).hasSize(1);
    }

    /** Bred heifers without a calving date: the true cause, and no proposal to hold. */
    @Test
    void noGainIsProposedFromNoDate() {
        var typed = heifers();
        typed.keySet().removeIf(name -> name.startsWith("calv"));
        typed.put("matureWeight", "1300 lb");
        var form = form(typed);
        assertThat(GroupForm.read(form, AnimalClass.BRED_HEIFER, new UUID(1, 3), null, null, TODAY))
                .isEmpty();
        assertThat(wrong(form)).contains("gain");
        typed.put("confirm", "gain-proposed");
        assertThat(GroupForm.read(form(typed), AnimalClass.BRED_HEIFER, new UUID(1, 3), null, null, TODAY))
                .isEmpty();
    }

    @Test
    void asksTheMatureWeightWhereNoCowsAreKnown() {
        var form = form(heifers());
        assertThat(GroupForm.read(form, AnimalClass.BRED_HEIFER, new UUID(1, 3), null, null, TODAY))
                .isEmpty();
        assertThat(wrong(form)).contains("matureWeight");
    }

    private static Map<String, String> bred(String in, String out, String inCalf, String byCycle) {
        var typed = cows();
        typed.keySet().removeIf(name -> name.startsWith("calving"));
        typed.put("bullsIn", in);
        typed.put("bullsOut", out);
        typed.put("inCalf", inCalf);
        typed.put("byCycle", byCycle);
        return typed;
    }

    /** 283 days on from June 5 is March 15. */
    @Test
    void readsBreedingDatesAndThePregnancyCheck() {
        var group = read(form(bred("Jun 5, 2026", "Jul 16, 2026", "180", "120 60")), null)
                .orElseThrow();
        assertThat(group.calving().get(0)).isEqualTo(new CalvingWeek(MARCH_15, 40));
        assertThat(group.calving().stream().mapToInt(CalvingWeek::head)).containsExactly(40, 40, 40, 20, 20, 20);
    }

    @ParameterizedTest(name = "{0} to {1}: {2}, {3}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Jun 5, 2026 | Jun 1, 2026 | 180 | '' | bullsOut",
                "Jun 5, 2026 | '' | 180 | '' | bullsOut",
                "Feb 29, 2026 | Jul 16, 2026 | 180 | '' | bullsIn",
                "Jun 5, 2026 | Jul 16, 2026 | 0 | '' | inCalf",
                "Jun 5, 2026 | Jul 16, 2026 | 180 | 100 60 | byCycle",
                "Jun 5, 2026 | Jul 16, 2026 | 180 | most | byCycle",
                "Jun 5, 2026 | Jul 16, 2026 | 250 | '' | calving",
                "Jun 5, 2027 | Jul 16, 2027 | 180 | '' | calving",
            })
    void refusesBreedingThatCannotBe(String in, String out, String inCalf, String byCycle, String field) {
        var form = form(bred(in, out, inCalf, byCycle));
        assertThat(read(form, null)).isEmpty();
        assertThat(wrong(form)).contains(field);
        assertThat(form.value("byCycle")).isEqualTo(byCycle);
    }

    @Test
    void refusesWeeksAndBreedingAtOnce() {
        var typed = cows();
        typed.putAll(Map.of("bullsIn", "Jun 5, 2026", "bullsOut", "Jul 16, 2026", "inCalf", "180"));
        var form = form(typed);
        assertThat(read(form, null)).isEmpty();
        assertThat(wrong(form)).contains("inCalf");
    }

    @Test
    void keepsHowFarTheyLieApart() {
        var typed = cows("lightest", "1100");
        typed.put("heaviest", "1,450 lb");
        typed.put("thinnest", "4");
        typed.put("fattest", "6.5");
        var group = read(form(typed), null).orElseThrow();
        assertThat(group.weights())
                .isEqualTo(new Group.Weights(Quantity.of(1100, Unit.POUND), Quantity.of(1450, Unit.POUND)));
        assertThat(group.scores()).isEqualTo(new Group.Scores(4, 6.5));
        assertThat(read(form(GroupForm.known(group)), group)).contains(group);
    }

    @ParameterizedTest(name = "{0} to {1}, {2} to {3}")
    @CsvSource({
        "1100, '', '', '', heaviest",
        "1450, 1100, '', '', heaviest",
        "1300, 1450, '', '', lightest",
        "90, 2470, '', '', lightest",
        "'', '', 0, 6, thinnest",
        "'', '', 4, 12, fattest",
        "'', '', 6, 4, fattest",
        "'', '', 5.5, 7, thinnest"
    })
    void refusesASpreadThatCannotBe(String light, String heavy, String thin, String fat, String field) {
        var typed = cows("lightest", light);
        typed.put("heaviest", heavy);
        typed.put("thinnest", thin);
        typed.put("fattest", fat);
        var form = form(typed);
        assertThat(read(form, null)).isEmpty();
        assertThat(wrong(form)).contains(field);
    }

    @Test
    void showsAGroupAsItWouldBeTypedAgain() {
        var group = read(form(cows("peakMilk", "20")), null).orElseThrow();
        assertThat(read(form(GroupForm.known(group)), group)).contains(group);
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "head | 0",
                "head | 12.5",
                "name | ''",
                "shrunk | ''",
                "weight | 90",
                "weight | 1.280,5",
                "weight | 1280 ft",
                "conditionScore | 0",
                "conditionScore | 12",
                "weighedOn | Dec 25, 2026",
                "weighedOn | Feb 29, 2026",
                "weaning | Mar 1, 2027",
                "calfBirthWeight | 900",
                "peakMilk | 1",
                "calving2head | many",
                "calving1begins | ''",
                "calvingCounts | 5 6",
                "breed | Unicorn",
            })
    void refusesBesideTheField(String field, String value) {
        var form = form(cows(field, value));
        assertThat(read(form, null)).isEmpty();
        assertThat(wrong(form)).contains(field);
        assertThat(form.value(field)).isEqualTo(value);
    }

    @ParameterizedTest(name = "{0} = {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "head | 150 | 200 head: The calving weeks cannot hold more than the 150 head",
                "calving1begins | Mar 15, 2028 | The time to the last calving week is at most 310 days",
                "calving2begins | Mar 17, 2027 | this week starts inside the one of Mar 15, 2027",
                "calving2head | -5 | a week has 0 head or more",
            })
    void refusesCalvingThatCannotBe(String field, String value, String words) {
        var form = form(cows(field, value));
        assertThat(read(form, null)).isEmpty();
        assertThat(wrong(form)).contains("calving");
        assertThat(form.problem(CalvingForm.CALVING).toLowerCase(Locale.ROOT)).contains(words.toLowerCase(Locale.ROOT));
    }

    @Test
    void namesTheSlipOfTheDecimalPoint() {
        var form = form(cows("weight", "128"));
        assertThat(read(form, null)).isEmpty();
        assertThat(form.problem(GroupForm.WEIGHT.ask())).contains("Did you mean 1,280 lb?");
    }

    /** Nobody scores calves as a matter of course; cows are asked. */
    @Test
    void calvesNeedNoScoreAndWhatIsTakenIsSaid() {
        var typed = cows("conditionScore", "");
        assertThat(read(form(typed), null)).isEmpty();
        List.of("calving1begins", "calving1head", "calving2head").forEach(typed::remove);
        typed.put("weight", "540 lb");
        typed.put("gain", "1.5");
        typed.put("weaning", "Oct 10, 2026");
        var form = form(typed);
        var calves = GroupForm.read(form, AnimalClass.GROWING, UUID.randomUUID(), null, null, TODAY);
        assertThat(wrong(form)).isEmpty();
        assertThat(calves.orElseThrow().conditionScore()).isEqualTo(5);
        assertThat(GroupForm.taken(form, calves.orElseThrow())).contains("condition score 5");
    }

    @Test
    void namesEverythingThatIsWrongAtOnce() {
        var typed = cows("head", "");
        typed.put("weighedOn", "yesterday");
        typed.put("conditionScore", "fat");
        var form = form(typed);
        assertThat(read(form, null)).isEmpty();
        assertThat(wrong(form)).containsExactly("head", "conditionScore", "weighedOn");
    }

    /** Asked once; kept when somebody says that it is right, and not asked about again. */
    @Test
    void asksAboutWhatIsUnusualAndKeepsIt() {
        var typed = cows("conditionScore", "3.5");
        var asked = form(typed);
        assertThat(read(asked, null)).isEmpty();
        assertThat(asked.doubts(GroupForm.SCORE.ask())).hasSize(1);

        typed.put("confirm", asked.doubts(GroupForm.SCORE.ask()).get(0).question());
        var confirmed = form(typed);
        var group = read(confirmed, null).orElseThrow();
        assertThat(group.conditionScore()).isEqualTo(3.5);
        assertThat(confirmed.confirmed()).hasSize(1);

        assertThat(read(form(GroupForm.known(group)), group)).contains(group);
    }

    @Test
    void asksEverythingInOneGo() {
        var typed = cows("conditionScore", "3.5");
        typed.put("weighedOn", "Nov 10, 2024");
        typed.put("turnout", "May 1, 2026");
        var form = form(typed);
        assertThat(read(form, null)).isEmpty();
        assertThat(wrong(form)).contains("weighedOn", "turnout", "conditionScore");
    }

    @Test
    void keepsABreedOfThreeAsItCame() {
        var before = read(form(cows("cross", "")), null).orElseThrow();
        var three = new Group(
                before.id(),
                before.name(),
                before.animals(),
                before.head(),
                before.weight(),
                before.shrunk(),
                before.weighedOn(),
                before.matureWeight(),
                before.conditionScore(),
                "Angus x Hereford x Simmental",
                before.calving(),
                null,
                null,
                before.weaning(),
                before.gain(),
                null,
                null,
                null,
                null,
                List.of());
        assertThat(read(form(GroupForm.known(three)), three)).contains(three);
    }
}
