package haywright.ranch;

/**
 * Whom the person who feeds can call; each may be empty. The adviser's name is in the {@link Settings}.
 *
 * @param adviserPhone as it was typed
 * @param veterinarian by name
 * @param veterinarianPhone as it was typed
 */
public record Contacts(String adviserPhone, String veterinarian, String veterinarianPhone) {
    public static final Contacts NOT_SAID = new Contacts("", "", "");
}
