package haywright.workings;

/** What a name must be: anything somebody would write on a gate, kept as typed. */
public final class Names {
    private static final int LONGEST = 200;

    private Names() {}

    /**
     * @param field the name of its field
     * @param whose in words: {@code a lot}
     * @throws Refused when it is blank, or longer than 200 characters
     */
    public static void require(String field, String name, String whose) {
        if (name.isBlank()) {
            throw new Refused(field, "nothing", whose + " needs a name", "Enter a name.");
        }
        fits(field, name);
    }

    /**
     * Where none is needed, as of a group that is asked about alone.
     *
     * @throws Refused when it is longer than 200 characters
     */
    public static void fits(String field, String name) {
        if (name.length() > LONGEST) {
            throw new Refused(
                    field,
                    name.substring(0, 40) + "… (" + name.length() + " characters)",
                    "a name has at most " + LONGEST + " characters",
                    "Move the rest to the notes.");
        }
    }
}
