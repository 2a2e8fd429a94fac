/**
 * The pages: one package for each step of the trail, handler beside template, and here what they all stand in.
 *
 * <p>Start at {@link haywright.app.server.Server}. A page on a ranch is a method that takes a
 * {@link haywright.app.web.Page}: it reads a {@link haywright.app.web.Form}, asks the engine, and shows a template. It
 * holds no arithmetic. {@code web.lots} is the example to follow.
 *
 * <p>How a page is made:
 *
 * <ol>
 *   <li>A class with {@code static void routes(Routes on)}; paths are relative to the ranch. {@code Server} names it in
 *       its list, {@code trail.Step} is marked as built, {@code trail.Trail} says what is done and what waits there.
 *   <li>Show: {@code page.show("haywright/app/web/lots/lots.jte", view)}. The template has {@code @param Page page} and
 *       {@code @param TheView view} and wraps itself in {@code @template.haywright.app.web.layout(frame =
 *       page.frame("Lots"), main = @`…`)}.
 *   <li>A form's fields are {@link haywright.app.web.Ask} constants, used by the template ({@code
 *       @template.haywright.app.web.form.field(form = view.form(), ask = LotForm.NAME)}) and by the reading side ({@code
 *       form.text(LotForm.NAME)}). Their names are the component names of the record they build, so that what the record
 *       refuses lands beside the field.
 *   <li>Save: {@code form.build(() -> new Lot(…))} is empty when anything was wrong; then {@code page.reject(…)} shows
 *       the form again as a draft that survives. Otherwise {@code page.save(form, "Lot added: …", ranch ->
 *       ranch.with(lot), "lots")} keeps it, offers Undo, and settles with whoever saved in between.
 * </ol>
 *
 * <p>Knows the engine, {@code words}, {@code store} and {@code document}. No request to any other machine, no inline
 * style or script: the content policy refuses them.
 */
@NullMarked
package haywright.app.web;

import org.jspecify.annotations.NullMarked;
