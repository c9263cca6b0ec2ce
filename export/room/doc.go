// Package room sets a top into a photograph of the client's room: in the
// perspective and at the scale that four marked corners give (package pose), in
// the room's light, with its shadow.
//
// Compose takes the picture of the top alone with its shadow (picture.RenderMatte)
// through the photograph's own camera, for the part of the photograph that it
// touches, and lays it over. How bright the room is and of which colour its light
// is judged from the photograph (light.go): exactly from a sheet of white paper,
// roughly from walls and the present top. The photograph itself is never changed,
// and nothing of its file but the picture goes into the result.
package room
