/**
 * Typed fields, described once.
 *
 * <p>Start at {@link haywright.app.web.form.Fields}: it says of a record which boxes a form has for it, what each is
 * called, in which unit, when it is needed, and which values are unusual. From that one description come the form with
 * what is known already, the record that is read back, the echo of each value in a second unit, the same record read from
 * JSON, and the template ({@code @template.haywright.app.web.form.fields}).
 */
@NullMarked
package haywright.app.web.form;

import org.jspecify.annotations.NullMarked;
