// Package paper writes scene pages as PDF: drawings as vectors, textures and
// pictures as images, text as text in embedded fonts. The same pages give the
// same bytes.
package paper
